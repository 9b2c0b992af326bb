import type { Notice } from "@leat/formula";
import { compensatedSum } from "@leat/numerics";

/** A named loss, in watts. */
export interface Loss {
  /** What loses it. */
  readonly name: string;
  /** Where in the survey it belongs. */
  readonly path: readonly (string | number)[];
  /** Power lost, in W, by a formula of its own: never what is left over. */
  readonly watts: number;
}

/** Where the power of the water goes. */
export interface Account {
  /** Power of the water over the gross head, in W. */
  readonly gross: number;
  /** Each loss, from the intake to the battery. */
  readonly losses: readonly Loss[];
  /** Power at the battery's terminals, in W. */
  readonly delivered: number;
}

/** What an account may miss, over the gross power: rounding. */
const rounding = 1e-9;

/**
 * What is left of an account: gross less losses less delivered, in W. It is nothing but rounding,
 * because no loss is worked out as a remainder.
 *
 * @param account - The account.
 * @returns The difference.
 */
export function openBy({ gross, losses, delivered }: Account): number {
  return compensatedSum([gross, -delivered, ...losses.map(({ watts }) => -watts)]);
}

/**
 * A stop where an account does not close.
 *
 * @param account - The account.
 * @returns The notice, or nothing where it closes to rounding.
 */
export function accountNotice(account: Account): Notice | undefined {
  const open = openBy(account);
  if (Math.abs(open) <= rounding * account.gross) return undefined;
  return {
    code: "account-open",
    severity: "stop",
    path: [],
    message: `the power account is open by ${Number(open.toPrecision(3))} W of ${Number(account.gross.toPrecision(6))} W: a loss is wrong or missing. Do not use these figures; report the survey that gave them.`,
    actual: `${open} W`,
    limit: "0 W to rounding",
  };
}
