import { solveManifold } from "@leat/penstock";
import { litrePerSecond, metre } from "@leat/quantity";
import { Workspace } from "epanet-js";
import { beforeAll, describe, expect, it } from "vitest";

import { epanet } from "./epanet.ts";
import { linesOf, manifoldOf, networks } from "./networks.ts";

const workspace = new Workspace();
beforeAll(() => workspace.loadModule());

// EPANET takes g = 32.2 ft/s² and Swamee and Jain's friction: half a per cent is what the two may differ by.
const share = 0.005;

describe("solveManifold beside EPANET", () => {
  it("is compared on penstocks of one to six reaches and one to six jets", () => {
    const jets = networks.map((each) => linesOf(each).filter(({ line }) => line.nozzle).length);
    expect(networks.length).toBeGreaterThanOrEqual(12);
    expect([Math.min(...jets), Math.max(...jets)]).toEqual([1, 6]);
    expect(new Set(networks.map(({ reaches }) => reaches.length))).toEqual(new Set([1, 2, 3, 6]));
  });

  it.each(networks)("agrees on $name", (network) => {
    const theirs = epanet(workspace, network);
    const { pipes, jets, grossHead, convergence } = solveManifold({
      ...manifoldOf(network),
      open: network.open,
    });
    expect(pipes.length).toBe(theirs.flows.length);
    pipes.forEach(({ flow, totalHead, path }, i) => {
      const name = path.join(".");
      const [q, h] = [theirs.flows[i]!, theirs.heads[i]!];
      expect(Math.abs(flow.in(litrePerSecond) - q), `${name}: flow`).toBeLessThanOrEqual(
        share * Math.abs(q) + 1e-4,
      );
      expect(Math.abs(totalHead.in(metre) - h), `${name}: head`).toBeLessThanOrEqual(
        share * grossHead.in(metre),
      );
    });
    const open = jets.filter((jet) => jet.open);
    expect(open.length).toBe(network.open?.length ?? jets.length);
    for (const { flow } of open) expect(flow.in(litrePerSecond)).toBeGreaterThan(0);
    expect(convergence.iterations).toBeLessThan(7);
  });
});
