/**
 * A sentence as the bench tells it in English, with {slots} for its values, and the same in another language. A slot
 * named n, n1, n2 … takes a number only; in a name, only a slot named list takes what holds a comma.
 */
export type ToldPair = readonly [english: string, other: string];
