/*
 * The 15-point Kronrod rule on [-1, 1] and the 7-point Gauss rule inside it, from the middle outwards.
 * Recomputed to 25 digits from their definitions: zeros of the Legendre polynomial P7 and of its Stieltjes
 * polynomial E8, weights by exactness on powers. Published in R. Piessens et al., QUADPACK, Springer 1983.
 */

/** Abscissae above zero that only the Kronrod rule uses. */
export const kronrodNodes: readonly number[] = [
  0.2077849550078984676, 0.5860872354676911303, 0.8648644233597690728, 0.9914553711208126392,
];
/** Their weights. */
export const kronrodWeights: readonly number[] = [
  0.2044329400752988924, 0.1690047266392679028, 0.1047900103222501838, 0.02293532201052922496,
];
/** Abscissae above zero that both rules share. */
export const sharedNodes: readonly number[] = [
  0.4058451513773971669, 0.7415311855993944399, 0.9491079123427585245,
];
/** Their weights in the Kronrod rule. */
export const sharedKronrodWeights: readonly number[] = [
  0.190350578064785409, 0.1406532597155259187, 0.06309209262997855329,
];
/** Their weights in the Gauss rule. */
export const sharedGaussWeights: readonly number[] = [
  0.3818300505051189449, 0.2797053914892766679, 0.1294849661688696933,
];
/** The weight of the middle in the Kronrod rule. */
export const middleKronrodWeight = 0.209482141084727828;
/** The weight of the middle in the Gauss rule. */
export const middleGaussWeight = 0.4179591836734693878;
