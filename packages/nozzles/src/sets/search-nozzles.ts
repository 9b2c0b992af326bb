import { leastShareUsed, risingSets, type SetFigures } from "./rising-sets.ts";

/**
 * What tells how nozzles run together: positions for a nozzle, sizes that may go there, and the flow of any set of open jets. More
 * jets open, or wider ones, must pass more in all.
 */
export interface NozzleRig {
  /** Number of positions. */
  readonly positions: number;
  /** Number of sizes, from narrow to wide. */
  readonly sizes: number;
  /** Positions of one number are alike: their nozzles may be swapped and nothing changes. */
  alike(position: number): number;
  /** Whether a size may go to a position. */
  fits(position: number, size: number): boolean;
  /** Puts a size into a position. */
  put(position: number, size: number): void;
  /**
   * Runs a set.
   *
   * @param open - Open positions, a bit for each.
   * @returns Its figures; nothing where it must not run.
   */
  run(open: number): SetFigures | undefined;
}

/** What nozzles are searched for. */
export interface NozzleSearch {
  /** Least flow that may be taken. */
  readonly low: number;
  /** Greatest. */
  readonly high: number;
  /** Least share of any flow between them that is to be used. */
  readonly share: number;
  /** How many answers are wanted. */
  readonly most: number;
  /** Sets after which the search stops where it is. */
  readonly mostRuns: number;
}

/** Nozzles that were found. */
export interface FoundNozzles {
  /** Size in each position. */
  readonly sizes: readonly number[];
  /** Least share that they use. */
  readonly share: number;
}

/** What a search came to. */
export interface NozzleSearchReport {
  /** Nozzles that use the share that was asked for, those that use the most first. */
  readonly found: readonly FoundNozzles[];
  /** Sets that were run. */
  readonly runs: number;
  /** Whether all nozzles were looked at, or shown not to be worth it. */
  readonly complete: boolean;
}

/**
 * Searches all nozzles for those that use the most of any flow in a range.
 *
 * Positions are filled by rising flow of their jet alone. No set that a later jet is in passes less than that jet alone: so what is
 * filled already settles how flows below it are met, and a jet that leaves a gap there is not looked at, nor any wider one. Nor is a
 * beginning that the widest nozzles everywhere else would leave short of the greatest flow.
 *
 * @param rig - How nozzles run together.
 * @param search - What is searched for.
 * @returns The best, and whether the search came to its end.
 */
export function searchNozzles(rig: NozzleRig, search: NozzleSearch): NozzleSearchReport {
  const { low, high, most } = search;
  const found: FoundNozzles[] = [];
  const filled: number[] = Array.from({ length: rig.positions }, () => -1);
  let runs = 0;
  let complete = true;

  const run = (open: number): SetFigures | undefined => {
    runs += 1;
    return rig.run(open);
  };
  const widest = filled.map((_, p) => {
    let size = rig.sizes - 1;
    while (size >= 0 && !rig.fits(p, size)) size -= 1;
    return size;
  });
  const alone = filled.map((_, p) =>
    Array.from({ length: rig.sizes }, (_, size) => {
      if (!rig.fits(p, size)) return undefined;
      rig.put(p, size);
      return run(1 << p)?.flow;
    }),
  );
  /** The share that an answer must use to be wanted still. */
  const needed = (): number =>
    found.length < most
      ? search.share
      : Math.max(search.share, (found.at(-1) as FoundNozzles).share);

  /** The greatest flow up to which sets use the needed share; it is for the next jet to begin there. */
  const reach = (sets: readonly SetFigures[]): number => {
    let until = low;
    for (const { flow } of risingSets(sets)) {
      if (flow > until) break;
      until = Math.max(until, flow / needed());
    }
    return until;
  };

  const keep = (sets: readonly SetFigures[]): void => {
    const share = leastShareUsed(risingSets(sets), low, high);
    if (!(share > 0 && share >= search.share)) return;
    if (found.length === most && !(share > needed())) return;
    const at = found.findIndex((other) => other.share < share);
    found.splice(at < 0 ? found.length : at, 0, { sizes: [...filled], share });
    if (found.length > most) found.pop();
  };

  const fill = (count: number, open: number, sets: readonly SetFigures[], last: number): void => {
    if (count === rig.positions) {
      keep(sets);
      return;
    }
    const until = reach(sets);
    const seen = new Set<number>();
    for (let p = 0; p < rig.positions; p++) {
      if (filled[p] !== -1 || seen.has(rig.alike(p))) continue;
      seen.add(rig.alike(p));
      for (let size = 0; size < rig.sizes; size++) {
        const flow = alone[p]?.[size];
        // Of two jets that pass the same alone, the one that stands first is filled first.
        if (flow === undefined || flow < last || (flow === last && isAfter(p, last))) continue;
        if (until < high && flow > until) break;
        if (runs >= search.mostRuns) {
          complete = false;
          return;
        }
        filled[p] = size;
        if (!isShort()) fill(count + 1, open | (1 << p), withSets(sets, open, p), flow);
        filled[p] = -1;
      }
    }
  };

  /** Whether a jet that passes the same alone stands after this position, so that the other order has been looked at. */
  const isAfter = (p: number, flow: number): boolean =>
    filled.some((size, other) => size !== -1 && other > p && alone[other]?.[size] === flow);

  /** Whether the widest nozzles in all positions that are not filled still leave the greatest flow unused. */
  const isShort = (): boolean => {
    filled.forEach((size, p) => rig.put(p, size === -1 ? (widest[p] as number) : size));
    const all = run(2 ** rig.positions - 1);
    return all !== undefined && all.flow < needed() * high;
  };

  const withSets = (sets: readonly SetFigures[], open: number, p: number): SetFigures[] => {
    const more = [...sets];
    for (let others = open; ; others = (others - 1) & open) {
      const set = run(others | (1 << p));
      if (set) more.push(set);
      if (others === 0) break;
    }
    return more;
  };

  fill(0, 0, [], 0);
  return { found, runs, complete };
}
