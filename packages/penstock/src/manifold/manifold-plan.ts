import {
  colebrookFactorOf,
  frictionFactorOf,
  turbulentFrom,
} from "../friction/friction-factor-of.ts";

/** A pipe of a manifold on plain numbers in coherent units. */
export interface PlainPipe {
  /** Which pipe it hangs on, by its place in the list, which is before its own; −1 for the intake. */
  readonly above: number;
  /** Inside diameter. */
  readonly bore: number;
  /** Absolute roughness of the wall. */
  readonly roughness: number;
  /** Length along the pipe. */
  readonly length: number;
  /** Sum of the coefficients of fittings and valve, on the velocity head in this bore. */
  readonly coefficient: number;
}

/** A nozzle of a manifold on plain numbers in coherent units. */
export interface PlainJet {
  /** Which pipe it ends, by its place in the list. */
  readonly pipe: number;
  /** Diameter of the opening. */
  readonly diameter: number;
  /** Flow over that of the opening without loss or contraction. */
  readonly dischargeCoefficient: number;
  /** Height above the level that the fall is counted from. */
  readonly height: number;
}

/** A penstock with its manifold on plain numbers in coherent units. */
export interface PlainManifold {
  /** Water level at the intake above the level that heights are counted from. */
  readonly fall: number;
  /** Gravity at the site. */
  readonly gravity: number;
  /** Kinematic viscosity of the water. */
  readonly viscosity: number;
  /** Pipes, each after the one that it hangs on. */
  readonly pipes: readonly PlainPipe[];
  /** Nozzles, one to a pipe that nothing else hangs on. */
  readonly jets: readonly PlainJet[];
}

/** Velocity at which the first guess takes friction: nothing but the number of steps depends on it. */
const guessedVelocity = 2;

/**
 * A penstock made ready to be solved for many sets of open jets, nozzles and pipes: numbers in typed arrays, and room for the answer,
 * so that solving allocates nothing.
 *
 * What is set by hand: `open`, and by {@link ManifoldPlan.setNozzle} and {@link ManifoldPlan.setPipe} what a search changes.
 * `solveManifoldPlan` fills the rest. Nothing is checked here: that is for the door that makes it.
 */
export class ManifoldPlan {
  /** Water level at the intake. */
  readonly fall: number;
  /** Gravity. */
  readonly gravity: number;
  /** Kinematic viscosity. */
  readonly viscosity: number;

  /** Of each pipe: the pipe that it hangs on, −1 for the intake. */
  readonly above: Int32Array;
  /** Of each pipe: the jet at its end, −1 where other pipes hang there. */
  readonly jetAt: Int32Array;
  /** Of each pipe: roughness over bore. */
  readonly relative: Float64Array;
  /** Of each pipe: Reynolds number of a flow of one. */
  readonly reynoldsPerFlow: Float64Array;
  /** Of each pipe: velocity of a flow of one. */
  readonly velocityPerFlow: Float64Array;
  /** Of each pipe: head lost to the wall, over f·Q². */
  readonly wall: Float64Array;
  /** Of each pipe: head lost in fittings, over Q². */
  readonly local: Float64Array;
  /** Of each pipe: friction factor where turbulence begins. */
  readonly atTurbulent: Float64Array;
  /** Of each pipe: 1/√f at the velocity of the first guess. */
  readonly guessedRoot: Float64Array;
  /** Of each pipe: head lost over Q², by the first guess. */
  readonly guessed: Float64Array;

  /** Of each jet: its pipe. */
  readonly pipeOf: Int32Array;
  /** Of each jet: head of the nozzle over Q². */
  readonly nozzle: Float64Array;
  /** Of each jet: discharge coefficient. */
  readonly dischargeCoefficient: Float64Array;
  /** Of each jet: height. */
  readonly height: Float64Array;

  /** Of each jet: 1 where it is open. All are, at first. */
  readonly open: Uint8Array;

  /** Answer, of each jet: its flow. */
  readonly jetFlow: Float64Array;
  /** Answer, of each jet: total head before its nozzle, above that jet; 0 where it is closed. */
  readonly netHead: Float64Array;
  /** Answer, of each pipe: its flow. */
  readonly flow: Float64Array;
  /** Answer, of each pipe: head lost to the wall. */
  readonly friction: Float64Array;
  /** Answer, of each pipe: head lost in fittings. */
  readonly fittings: Float64Array;
  /** Answer, of each pipe: total head at its lower end. */
  readonly head: Float64Array;
  /** Answer: all flow. */
  total = 0;
  /** Answer: an open jet that would draw air, −1 where all run; with one, there is no other answer. */
  dry = -1;
  /** Answer: passes through the pipes. */
  iterations = 0;
  /** Answer: greatest head that a jet's path is off by. */
  residual = 0;
  /** Answer: what a flow of a jet can be off by, proven from what the heads are off by. */
  within = 0;
  /** Answer: whether the bracketed steps were needed. */
  shortened = false;

  /** Of each pipe: the root of Colebrook and White that the last pass ended at. */
  readonly root: Float64Array;
  /** Of each pipe: change of the head lost, wall and nozzle, with the flow. */
  readonly slope: Float64Array;
  /** Of each pipe: change of head with flow, of it and all below. */
  readonly resistance: Float64Array;
  /** Of each pipe: flow of all that hangs on it. */
  readonly belowFlow: Float64Array;
  /** Of each pipe: change of flow with head, of all that hangs on it. */
  readonly conductance: Float64Array;
  /** Of each pipe: change of head that its flow would need to stay. */
  readonly lift: Float64Array;
  /** Of each pipe: change of flow that what hangs on it asks for; then change of head at its lower end. */
  readonly drawn: Float64Array;
  /** Of each jet: head that its path is off by. */
  readonly miss: Float64Array;
  /** Of each jet: the last step. */
  readonly step: Float64Array;
  /** Of each jet: flow before the last step. */
  readonly before: Float64Array;
  /** Least flow of an open jet, whichever way. */
  least = 0;
  /** Least flow of an open jet, with its sign. */
  lowest = 0;

  /** @param manifold - What it is made of. */
  constructor(manifold: PlainManifold) {
    const { pipes, jets } = manifold;
    const [m, n] = [pipes.length, jets.length];
    this.fall = manifold.fall;
    this.gravity = manifold.gravity;
    this.viscosity = manifold.viscosity;
    this.above = Int32Array.from(pipes, ({ above }) => above);
    this.jetAt = new Int32Array(m).fill(-1);
    this.pipeOf = Int32Array.from(jets, ({ pipe }) => pipe);
    jets.forEach(({ pipe }, j) => (this.jetAt[pipe] = j));
    this.relative = new Float64Array(m);
    this.reynoldsPerFlow = new Float64Array(m);
    this.velocityPerFlow = new Float64Array(m);
    this.wall = new Float64Array(m);
    this.local = new Float64Array(m);
    this.atTurbulent = new Float64Array(m);
    this.guessedRoot = new Float64Array(m);
    this.guessed = new Float64Array(m);
    this.nozzle = new Float64Array(n);
    this.dischargeCoefficient = Float64Array.from(jets, (jet) => jet.dischargeCoefficient);
    this.height = Float64Array.from(jets, ({ height }) => height);
    this.open = new Uint8Array(n).fill(1);
    this.jetFlow = new Float64Array(n);
    this.netHead = new Float64Array(n);
    this.flow = new Float64Array(m);
    this.friction = new Float64Array(m);
    this.fittings = new Float64Array(m);
    this.head = new Float64Array(m);
    this.root = new Float64Array(m);
    this.slope = new Float64Array(m);
    this.resistance = new Float64Array(m);
    this.lift = new Float64Array(m);
    this.belowFlow = new Float64Array(m);
    this.conductance = new Float64Array(m);
    this.drawn = new Float64Array(m);
    this.miss = new Float64Array(n);
    this.step = new Float64Array(n);
    this.before = new Float64Array(n);
    pipes.forEach((pipe, i) =>
      this.setPipe(i, pipe.bore, pipe.roughness, pipe.length, pipe.coefficient),
    );
    jets.forEach(({ diameter }, j) => this.setNozzle(j, diameter));
  }

  /**
   * Puts another pipe in the place of one.
   *
   * @param pipe - Which, by its place in the list.
   * @param bore - Inside diameter.
   * @param roughness - Absolute roughness of the wall.
   * @param length - Length along the pipe.
   * @param coefficient - Sum of the coefficients of fittings and valve.
   */
  setPipe(
    pipe: number,
    bore: number,
    roughness: number,
    length: number,
    coefficient: number,
  ): void {
    const velocity = 4 / (Math.PI * bore * bore);
    const head = (velocity * velocity) / (2 * this.gravity);
    const relative = roughness / bore;
    const reynolds = (velocity * bore) / this.viscosity;
    const factor = frictionFactorOf(reynolds * (guessedVelocity / velocity), relative);
    this.relative[pipe] = relative;
    this.velocityPerFlow[pipe] = velocity;
    this.reynoldsPerFlow[pipe] = reynolds;
    this.wall[pipe] = (length / bore) * head;
    this.local[pipe] = coefficient * head;
    this.atTurbulent[pipe] = colebrookFactorOf(turbulentFrom, relative);
    this.guessedRoot[pipe] = 1 / Math.sqrt(factor);
    this.guessed[pipe] = ((factor * length) / bore + coefficient) * head;
  }

  /**
   * Puts another nozzle in the place of one.
   *
   * @param jet - Which, by its place in the list.
   * @param diameter - Diameter of the opening.
   */
  setNozzle(jet: number, diameter: number): void {
    const passed = this.dischargeCoefficient[jet]! * (Math.PI / 4) * diameter * diameter;
    this.nozzle[jet] = 1 / (2 * this.gravity * passed * passed);
  }
}
