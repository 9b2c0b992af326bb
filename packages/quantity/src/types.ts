import type {
  ExponentsOf,
  HalfOf,
  MinusOf,
  NameOf,
  NegativeOf,
  PlainOf,
  PlusOf,
  RelativesOf,
  SumOf,
} from "./generated/types.ts";

// A kind's name is its type. Products look the exponents up, add them and look the name up again;
// what has no name is called by its base units, such as `m^0.5·s^-1`.

type Seven = readonly [string, string, string, string, string, string, string];

/** Exponent of one base in an unnamed kind. */
type ReadExponent<
  N extends string,
  Base extends string,
> = `·${N}·` extends `${string}·${Base}^${infer E}·${string}`
  ? E
  : `·${N}·` extends `${string}·${Base}·${string}`
    ? "1"
    : "0";

type Exponents<N extends string> = N extends keyof ExponentsOf
  ? ExponentsOf[N]
  : readonly [
      ReadExponent<N, "m">,
      ReadExponent<N, "kg">,
      ReadExponent<N, "s">,
      ReadExponent<N, "A">,
      ReadExponent<N, "K">,
      ReadExponent<N, "¤">,
      ReadExponent<N, "rad">,
    ];

/** An entry of a generated table, or a mark that no table has. */
type Entry<T, A, B> = A extends keyof T
  ? B extends keyof T[A]
    ? T[A][B] & string
    : "beyond"
  : "beyond";
type Look<T, A> = A extends keyof T ? T[A] & string : "beyond";

type Add<A extends Seven, B extends Seven> = readonly [
  Entry<SumOf, A[0], B[0]>,
  Entry<SumOf, A[1], B[1]>,
  Entry<SumOf, A[2], B[2]>,
  Entry<SumOf, A[3], B[3]>,
  Entry<SumOf, A[4], B[4]>,
  Entry<SumOf, A[5], B[5]>,
  Entry<SumOf, A[6], B[6]>,
];

type Negative<A extends Seven> = readonly [
  Look<NegativeOf, A[0]>,
  Look<NegativeOf, A[1]>,
  Look<NegativeOf, A[2]>,
  Look<NegativeOf, A[3]>,
  Look<NegativeOf, A[4]>,
  Look<NegativeOf, A[5]>,
  Look<NegativeOf, A[6]>,
];

type Half<A extends Seven> = readonly [
  Look<HalfOf, A[0]>,
  Look<HalfOf, A[1]>,
  Look<HalfOf, A[2]>,
  Look<HalfOf, A[3]>,
  Look<HalfOf, A[4]>,
  Look<HalfOf, A[5]>,
  Look<HalfOf, A[6]>,
];

type Part<Base extends string, E extends string> = E extends "0"
  ? ""
  : E extends "1"
    ? `·${Base}`
    : `·${Base}^${E}`;

type Unnamed<E extends Seven> =
  `${Part<"m", E[0]>}${Part<"kg", E[1]>}${Part<"s", E[2]>}${Part<"A", E[3]>}${Part<"K", E[4]>}${Part<"¤", E[5]>}${Part<"rad", E[6]>}` extends `·${infer N}`
    ? N
    : never;

type Key<E extends Seven> = `${E[0]},${E[1]},${E[2]},${E[3]},${E[4]},${E[5]},${E[6]}`;

type Name<E extends Seven> =
  Key<E> extends infer K
    ? K extends keyof NameOf
      ? NameOf[K]
      : K extends `${string}beyond${string}`
        ? "an exponent beyond the range"
        : Unnamed<E>
    : never;

/** The plain kind of a product. */
export type Product<A extends string, B extends string> = string extends A | B
  ? string
  : Name<Add<Exponents<A>, Exponents<B>>>;

/** The plain kind of a quotient. */
export type Quotient<A extends string, B extends string> = string extends A | B
  ? string
  : Name<Add<Exponents<A>, Negative<Exponents<B>>>>;

/** The plain kind of a square root. */
export type Root<A extends string> = string extends A ? string : Name<Half<Exponents<A>>>;

/** Kinds that may be added to a kind. */
export type PlusPartner<A extends string> = A extends keyof PlusOf ? A | keyof PlusOf[A] : A;

/** Kinds that may be subtracted from a kind. */
export type MinusPartner<A extends string> = A extends keyof MinusOf ? A | keyof MinusOf[A] : A;

/** The kind of a sum. */
export type Plus<A extends string, B extends string> = A extends B
  ? A
  : A extends keyof PlusOf
    ? B extends keyof PlusOf[A]
      ? PlusOf[A][B] & string
      : never
    : never;

/** The kind of a difference. */
export type Minus<A extends string, B extends string> = A extends B
  ? A
  : A extends keyof MinusOf
    ? B extends keyof MinusOf[A]
      ? MinusOf[A][B] & string
      : never
    : never;

/** Kinds of one dimension, between which `as` is the door. */
export type Relative<A extends string> = string extends A
  ? string
  : A extends keyof RelativesOf
    ? RelativesOf[A]
    : A;

/** The plain kind of a kind. */
export type Plain<A extends string> = A extends keyof PlainOf ? PlainOf[A] : A;
