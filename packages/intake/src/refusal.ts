import { type Citation, firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";
import { type AnyQuantity, coherentUnit, isQuantity, QuantityError } from "@leat/quantity";

/** What may be asked for besides the answer. */
export interface NoticeOptions {
  /** Told of every notice of the answer. */
  readonly onNotice?: ((notice: Notice) => void) | undefined;
}

/** What a refusal says besides its words. */
export interface RefusalFacts {
  /** What was got. */
  readonly actual?: string | undefined;
  /** What is allowed. */
  readonly limit?: string | undefined;
  /** Whose limit it is; the meaning of the input where it is left out. */
  readonly source?: Citation | undefined;
}

/**
 * The error for what no answer comes of.
 *
 * @param code - Stable code.
 * @param path - Where in the input.
 * @param message - Where, what, got, what to do.
 * @param facts - What was got and what is allowed.
 * @returns The error, to be thrown.
 */
export function refusal(
  code: string,
  path: Notice["path"],
  message: string,
  { source = firstPrinciples.at("meaning of the input"), ...facts }: RefusalFacts = {},
): NonPhysicalError {
  return new NonPhysicalError([{ code, severity: "stop", path, message, ...facts, source }]);
}

/**
 * Refuses what is no quantity of a kind: callers without types pass what they like.
 *
 * @param id - Who asks.
 * @param path - Where in the input.
 * @param value - What was given.
 * @param kind - What is wanted.
 * @throws QuantityError `kind` where it is anything else.
 */
export function requireKind(
  id: string,
  path: Notice["path"],
  value: unknown,
  kind: string,
): asserts value is AnyQuantity {
  if (isQuantity(value) && value.kind === kind) return;
  throw new QuantityError(
    "kind",
    `${id}: ${path.join(".")} = ${isQuantity(value) ? `${String(value)} (${value.kind})` : typeof value} is refused: give a ${kind} (such as ${String(coherentUnit(kind, "USD").of(1))}).`,
  );
}

/**
 * Refuses a quantity below zero, or zero where it must be above.
 *
 * @param id - Who asks.
 * @param path - Where in the input.
 * @param value - What was given.
 * @param least - What it must be.
 * @throws NonPhysicalError where it is not.
 */
export function requireSign(
  id: string,
  path: Notice["path"],
  value: AnyQuantity,
  least: "positive" | "non-negative",
): void {
  const n = value["~si"];
  if (least === "positive" ? n > 0 : n >= 0) return;
  const where = path.join(".");
  throw refusal(
    "non-physical",
    path,
    `${id}: ${where} = ${String(value)} is ${least === "positive" ? "not above" : "below"} zero. Check its sign and its unit.`,
    { actual: String(value), limit: least === "positive" ? "above 0" : "at least 0" },
  );
}

/**
 * Hands an answer's notices to whoever asked to be told.
 *
 * @param notices - The notices.
 * @param options - Who asked.
 * @returns The same notices.
 */
export function tell(notices: readonly Notice[], { onNotice }: NoticeOptions): readonly Notice[] {
  if (onNotice) for (const notice of notices) onNotice(notice);
  return notices;
}
