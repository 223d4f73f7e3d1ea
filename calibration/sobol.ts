/**
 * Primitive polynomials and initial direction numbers of dimensions 2 to 40: Joe & Kuo 2008, SIAM J. Sci. Comput. 30,
 * 2635–2654, set new-joe-kuo-6.21201, free to use with its copyright note kept:
 * Copyright (c) 2008, Frances Y. Kuo and Stephen Joe. All rights reserved. First number: the polynomial's bits.
 */
// biome-ignore format: a table
const directions: readonly (readonly [number, ...number[]])[] = [
  [3, 1],
  [7, 1, 3],
  [11, 1, 3, 1],
  [13, 1, 1, 1],
  [19, 1, 1, 3, 3],
  [25, 1, 3, 5, 13],
  [37, 1, 1, 5, 5, 17],
  [41, 1, 1, 5, 5, 5],
  [47, 1, 1, 7, 11, 19],
  [55, 1, 1, 5, 1, 1],
  [59, 1, 1, 1, 3, 11],
  [61, 1, 3, 5, 5, 31],
  [67, 1, 3, 3, 9, 7, 49],
  [91, 1, 1, 1, 15, 21, 21],
  [97, 1, 3, 1, 13, 27, 49],
  [103, 1, 1, 1, 15, 7, 5],
  [109, 1, 3, 1, 15, 13, 25],
  [115, 1, 1, 5, 5, 19, 61],
  [131, 1, 3, 7, 11, 23, 15, 103],
  [137, 1, 3, 7, 13, 13, 15, 69],
  [143, 1, 1, 3, 13, 7, 35, 63],
  [145, 1, 3, 5, 9, 1, 25, 53],
  [157, 1, 3, 1, 13, 9, 35, 107],
  [167, 1, 3, 1, 5, 27, 61, 31],
  [171, 1, 1, 5, 11, 19, 41, 61],
  [185, 1, 3, 5, 3, 3, 13, 69],
  [191, 1, 1, 7, 13, 1, 19, 1],
  [193, 1, 3, 7, 5, 13, 19, 59],
  [203, 1, 1, 3, 9, 25, 29, 41],
  [211, 1, 3, 5, 13, 23, 1, 55],
  [213, 1, 3, 7, 3, 13, 59, 17],
  [229, 1, 3, 1, 3, 5, 53, 69],
  [239, 1, 1, 5, 5, 23, 33, 13],
  [241, 1, 1, 7, 7, 1, 61, 123],
  [247, 1, 1, 7, 9, 13, 61, 49],
  [253, 1, 3, 3, 5, 3, 55, 33],
  [285, 1, 3, 1, 15, 31, 13, 49, 245],
  [299, 1, 3, 5, 15, 31, 59, 63, 97],
  [301, 1, 3, 1, 11, 11, 11, 77, 249],
];

/** How many inputs can have a quasi-random dimension of their own. */
export const sobolDimensions = directions.length + 1;

/** Sobol's direction integers of dimension 0…39, 32 of them. */
function directionIntegers(dimension: number): Uint32Array {
  const v = new Uint32Array(32);
  if (dimension === 0) return v.map((_, i) => 2 ** (31 - i));
  const [polynomial, ...initial] = directions[dimension - 1]!;
  const degree = initial.length;
  initial.forEach((m, i) => {
    v[i] = m * 2 ** (31 - i);
  });
  for (let i = degree; i < 32; i++) {
    let next = v[i - degree]! ^ (v[i - degree]! >>> degree);
    for (let k = 1; k < degree; k++) if ((polynomial >>> (degree - k)) & 1) next ^= v[i - k]!;
    v[i] = next >>> 0;
  }
  return v;
}

const kept: Uint32Array[] = [];

/**
 * Fills `out` with points `from`, `from` + 1, … of one dimension of Sobol's sequence in Gray-code order, each xored with
 * `shift` (32 random bits) and placed in the middle of its cell: numbers strictly between 0 and 1. With one random shift
 * for each dimension and block, every block is an independent, unbiased sample that fills the cube evenly.
 */
export function sobolColumn(out: Float64Array, dimension: number, from: number, shift: number): void {
  kept[dimension] ??= directionIntegers(dimension);
  const v = kept[dimension];
  let x = shift | 0;
  for (let gray = from ^ (from >>> 1), i = 0; gray !== 0; gray >>>= 1, i++) if (gray & 1) x ^= v[i]!;
  for (let k = 0; k < out.length; k++) {
    out[k] = ((x >>> 0) + 0.5) / 4294967296;
    const flipped = 31 - Math.clz32(~(from + k) & (from + k + 1));
    x ^= v[flipped]!;
  }
}
