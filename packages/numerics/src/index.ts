/**
 * Roots, interpolation, quadrature, ODE steps, dense solves and seeded random numbers that say whether they converged.
 *
 * @packageDocumentation
 */
export type { Curve } from "./curve/curve.ts";
export { linearCurve } from "./curve/linear-curve.ts";
export { monotoneCurve } from "./curve/monotone-curve.ts";
export { solveCholesky } from "./dense/cholesky.ts";
export type { CholeskyReport } from "./dense/cholesky.ts";
export { leastSquares } from "./dense/least-squares.ts";
export type { LeastSquaresReport } from "./dense/least-squares.ts";
export { luFactors, luSolve, reciprocalCondition, solveDense } from "./dense/lu.ts";
export type { DenseReport, LuFactors } from "./dense/lu.ts";
export type { Matrix } from "./dense/matrix.ts";
export { chiSquareProbability, chiSquareQuantile } from "./distribution/chi-square.ts";
export { gammaQuantile } from "./distribution/gamma-quantile.ts";
export { studentQuantile } from "./distribution/student-quantile.ts";
export { NumericsError } from "./numerics-error.ts";
export type { NumericsErrorCode, NumericsErrorDetails } from "./numerics-error.ts";
export { dormandPrince } from "./ode/dormand-prince.ts";
export type { DormandPrinceOptions } from "./ode/dormand-prince.ts";
export type { OdeEvent, OdeOptions, OdeReport, OdeSystem } from "./ode/ode-system.ts";
export { rungeKutta4 } from "./ode/runge-kutta-4.ts";
export type { RungeKutta4Options } from "./ode/runge-kutta-4.ts";
export { integrate } from "./quadrature/integrate.ts";
export type { IntegralReport, IntegrateOptions } from "./quadrature/integrate.ts";
export { trapezoid } from "./quadrature/trapezoid.ts";
export { normalQuantile } from "./random/normal-quantile.ts";
export { seededRandom } from "./random/seeded-random.ts";
export type { SeededRandom } from "./random/seeded-random.ts";
export { bracketedRoot } from "./root/bracketed-root.ts";
export { expandBracket } from "./root/expand-bracket.ts";
export type { ExpandedBracket, ExpandOptions } from "./root/expand-bracket.ts";
export { newtonInBracket } from "./root/newton-in-bracket.ts";
export type { NewtonOptions } from "./root/newton-in-bracket.ts";
export type { RootOptions, RootReport } from "./root/root-report.ts";
export { compensatedSum, CompensatedSum } from "./sum/compensated-sum.ts";
