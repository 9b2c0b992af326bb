import { input, type ScalarInput } from "@leat/formula";

/** The channel, for the formulas that ask it alike. */
export interface ChannelInputs {
  /** Width of the bed; nothing for a ditch that comes to a point. */
  readonly bedWidth: ScalarInput<"length", "b", false>;
  /** How far a bank runs back over how far it rises; 0 for upright walls. */
  readonly bankSlope: ScalarInput<"ratio", "z", false>;
  /** Manning's number of the lining, in seconds and metres. */
  readonly manningNumber: ScalarInput<"coefficient", "n", false>;
  /** Fall of the bed over its length. */
  readonly slope: ScalarInput<"ratio", "S", false>;
}

/** Those inputs. */
export function channelInputs(): ChannelInputs {
  return {
    bedWidth: input("length", "b"),
    bankSlope: input("ratio", "z"),
    manningNumber: input("coefficient", "n", { domain: "positive" }),
    slope: input("ratio", "S", { domain: "positive" }),
  };
}
