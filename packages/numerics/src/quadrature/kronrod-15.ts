/*
 * The 15-point Kronrod rule on [-1, 1] and the 7-point Gauss rule inside it, from the middle outwards.
 * Recomputed to 25 digits from their definitions: zeros of the Legendre polynomial P7 and of its Stieltjes
 * polynomial E8, weights by exactness on powers; then rounded to the nearest
 * number that can be held. Published in R. Piessens et al., QUADPACK, Springer 1983.
 */

/** Abscissae above zero that only the Kronrod rule uses. */
export const kronrodNodes: readonly number[] = [
  0.20778495500789848, 0.5860872354676911, 0.8648644233597691, 0.9914553711208126,
];
/** Their weights. */
export const kronrodWeights: readonly number[] = [
  0.20443294007529889, 0.1690047266392679, 0.10479001032225019, 0.022935322010529224,
];
/** Abscissae above zero that both rules share. */
export const sharedNodes: readonly number[] = [
  0.4058451513773972, 0.7415311855993945, 0.9491079123427585,
];
/** Their weights in the Kronrod rule. */
export const sharedKronrodWeights: readonly number[] = [
  0.19035057806478542, 0.14065325971552592, 0.06309209262997856,
];
/** Their weights in the Gauss rule. */
export const sharedGaussWeights: readonly number[] = [
  0.3818300505051189, 0.27970539148927664, 0.1294849661688697,
];
/** The weight of the middle in the Kronrod rule. */
export const middleKronrodWeight = 0.20948214108472782;
/** The weight of the middle in the Gauss rule. */
export const middleGaussWeight = 0.4179591836734694;
