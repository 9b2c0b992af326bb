// Generated from kinds.mjs by `npm run generate`: change the table, not this file.

/** Base units, in the order of the packed exponents. */
export const bases: readonly string[] = ["m","kg","s","A","K","¤","rad"];

/** Name, coherent unit, packed exponents, and the plain kind that it is a kind of. */
export const kindTable: readonly (readonly [string, string, number, string?])[] = [
  ["ratio","1",0],
  ["length","m",2],
  ["area","m²",4],
  ["volume","m³",6],
  ["volume flow","m³/s",-8186],
  ["velocity","m/s",-8190],
  ["acceleration","m/s²",-16382],
  ["kinematic viscosity","m²/s",-8188],
  ["specific energy","J/kg",-16380],
  ["mass","kg",128],
  ["density","kg/m³",122],
  ["mass flow","kg/s",-8064],
  ["mass per length","kg/m",126],
  ["time","s",8192],
  ["frequency","Hz",-8192],
  ["force","N",-16254],
  ["pressure","Pa",-16258],
  ["dynamic viscosity","Pa·s",-8066],
  ["specific weight","N/m³",-16260],
  ["energy","J",-16252],
  ["power","W",-24444],
  ["angle","rad",137438953472],
  ["angular velocity","rad/s",137438945280],
  ["torque","N·m/rad",-137438969724],
  ["moment of inertia","kg·m²/rad²",-274877906812],
  ["current","A",524288],
  ["charge","C",532480],
  ["voltage","V",-548732],
  ["resistance","Ω",-1073020],
  ["resistance per length","Ω/m",-1073022],
  ["resistivity","Ω·m",-1073018],
  ["conductance","S",1073020],
  ["conductivity","S/m",1073018],
  ["conductivity time","S·s/m",1081210],
  ["concentration per conductivity","kg/(m²·S)",-1072896],
  ["inductance","H",-1064828],
  ["capacitance","F",1081212],
  ["voltage constant","V·s/rad",-137439494012],
  ["temperature difference","K",33554432],
  ["temperature coefficient","1/K",-33554432],
  ["specific heat","J/(kg·K)",-33570812],
  ["heat capacity","J/K",-33570684],
  ["money","¤",2147483648],
  ["price per length","¤/m",2147483646],
  ["price per energy","¤/J",2147499900],
  ["gross head","m",2,"length"],
  ["net head","m",2,"length"],
  ["head loss","m",2,"length"],
  ["pipe length","m",2,"length"],
  ["hydraulic power","W",-24444,"power"],
  ["shaft power","W",-24444,"power"],
  ["electric power","W",-24444,"power"],
  ["efficiency","1",0,"ratio"],
  ["coefficient","1",0,"ratio"],
  ["count","1",0,"ratio"],
  ["runoff","m/s",-8190,"velocity"],
];

/** Left, sign, right, result, for sums of unlike kinds. */
export const sumTable: readonly (readonly string[])[] = [["gross head","-","head loss","net head"],["gross head","-","net head","head loss"],["net head","+","head loss","gross head"],["head loss","+","net head","gross head"],["power","+","hydraulic power","power"],["power","-","hydraulic power","power"],["power","+","shaft power","power"],["power","-","shaft power","power"],["power","+","electric power","power"],["power","-","electric power","power"],["hydraulic power","+","power","power"],["hydraulic power","-","power","power"],["hydraulic power","+","shaft power","power"],["hydraulic power","-","shaft power","power"],["hydraulic power","+","electric power","power"],["hydraulic power","-","electric power","power"],["shaft power","+","power","power"],["shaft power","-","power","power"],["shaft power","+","hydraulic power","power"],["shaft power","-","hydraulic power","power"],["shaft power","+","electric power","power"],["shaft power","-","electric power","power"],["electric power","+","power","power"],["electric power","-","power","power"],["electric power","+","hydraulic power","power"],["electric power","-","hydraulic power","power"],["electric power","+","shaft power","power"],["electric power","-","shaft power","power"]];

/** Origin of a point: the kind of its differences, and whether it has instances. */
export const originTable: Readonly<Record<string, readonly [string, boolean]>> = {"absolute zero":["temperature difference",false],"vacuum":["pressure",false],"local atmosphere":["pressure",true],"site datum":["length",true],"staff zero":["length",true]};
