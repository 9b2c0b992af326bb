import { celsius } from "@leat/quantity";
import { kinematicViscosity } from "@leat/water";
import * as toolkit from "epanet-js";

import { linesOf, type Network } from "./networks.ts";

// The types of the package lose its lists of codes where modules are resolved as Node does.
const { FlowUnits, HeadLossType, InitHydOption, LinkProperty, LinkType } =
  toolkit as unknown as Codes;
const { NodeProperty, NodeType, Option } = toolkit as unknown as Codes;

interface Codes {
  readonly FlowUnits: { readonly LPS: number };
  readonly HeadLossType: { readonly DW: number };
  readonly InitHydOption: { readonly NoSave: number };
  readonly LinkProperty: { readonly Flow: number };
  readonly LinkType: { readonly Pipe: number };
  readonly NodeProperty: {
    readonly Elevation: number;
    readonly Emitter: number;
    readonly Head: number;
  };
  readonly NodeType: { readonly Junction: number; readonly Reservoir: number };
  readonly Option: {
    readonly Accuracy: number;
    readonly SpViscos: number;
    readonly Trials: number;
  };
}

/** Kinematic viscosity that EPANET's option stands over: 1.1e-5 ft²/s. */
const viscosityUnit = 1.1e-5 * 0.3048 * 0.3048;

/** What EPANET makes of a penstock. */
export interface Answer {
  /** Flow of each pipe, in L/s. */
  readonly flows: number[];
  /** Head at the lower end of each, in m. */
  readonly heads: number[];
}

/**
 * Solves a penstock by EPANET: a reservoir, junctions, nozzles as emitters. Its g is 32.2 ft/s², its friction Swamee and Jain's.
 *
 * @param workspace - Loaded.
 * @param network - The penstock.
 * @returns Flows and heads.
 */
export function epanet(workspace: toolkit.Workspace, network: Network): Answer {
  const model = new toolkit.Project(workspace);
  model.init("report.rpt", "out.bin", FlowUnits.LPS, HeadLossType.DW);
  const lines = linesOf(network);
  let jet = -1;
  // Junctions first: a reservoir stands after them, and its place would move.
  const nodes = lines.map(({ line }, i) => {
    const node = model.addNode(`n${i}`, NodeType.Junction);
    model.setNodeValue(node, NodeProperty.Elevation, line.z ?? 0);
    if (line.nozzle !== undefined) {
      jet += 1;
      const area = (Math.PI / 4) * (line.nozzle / 1000) ** 2;
      const perRoot = 1000 * (line.cd ?? 0.95) * area * Math.sqrt(2 * 9.80665);
      const isOpen = network.open?.includes(jet) ?? true;
      model.setNodeValue(node, NodeProperty.Emitter, isOpen ? perRoot : 0);
    }
    return node;
  });
  const intake = model.addNode("intake", NodeType.Reservoir);
  model.setNodeValue(intake, NodeProperty.Elevation, network.water);
  const links = lines.map(({ line, above }, i) => {
    const link = model.addLink(`p${i}`, LinkType.Pipe, above < 0 ? "intake" : `n${above}`, `n${i}`);
    const k = (line.k ?? 0) + (line.valve ?? 0);
    model.setPipeData(link, line.length, line.bore, line.rough, k);
    return link;
  });
  const viscosity = kinematicViscosity({ temperature: celsius.at(network.celsius ?? 10) })["~si"];
  model.setOption(Option.SpViscos, viscosity / viscosityUnit);
  model.setOption(Option.Accuracy, 1e-6);
  model.setOption(Option.Trials, 200);
  model.openH();
  model.initH(InitHydOption.NoSave);
  model.runH();
  return {
    flows: links.map((link) => model.getLinkValue(link, LinkProperty.Flow)),
    heads: nodes.map((node) => model.getNodeValue(node, NodeProperty.Head)),
  };
}
