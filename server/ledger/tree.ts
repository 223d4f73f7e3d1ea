import { hash } from "node:crypto";

/** Hash of a leaf: SHA-256 of 0x00 and its data (RFC 9162, 2.1.1). */
export function leafHash(data: string | Uint8Array): Buffer {
  const bytes = typeof data === "string" ? Buffer.from(data) : data;
  return hash("sha256", Buffer.concat([Buffer.of(0), bytes]), "buffer");
}

function nodeHash(left: Uint8Array, right: Uint8Array): Buffer {
  return hash("sha256", Buffer.concat([Buffer.of(1), left, right]), "buffer");
}

/**
 * A Merkle tree that leaves are only ever added to (RFC 9162, 2.1). Of everything below, only the roots of the full
 * subtrees are kept, largest first: as many as its size has ones in binary.
 */
export class Tree {
  #size: number;
  #peaks: Buffer[];

  /** Throws RangeError when a tree of this size has another number of full subtrees. */
  constructor(size = 0, peaks: readonly Buffer[] = []) {
    if (peaks.length !== onesIn(size) || peaks.some(({ length }) => length !== 32))
      throw new RangeError(
        `A tree of ${size} leaves has ${onesIn(size)} full subtrees, not ${peaks.length}.`,
      );
    this.#size = size;
    this.#peaks = [...peaks];
  }

  get size(): number {
    return this.#size;
  }

  get peaks(): readonly Buffer[] {
    return this.#peaks;
  }

  /** Adds the hash of a leaf. */
  add(leaf: Buffer): void {
    let joined = leaf;
    for (let before = this.#size; before % 2 === 1; before = (before - 1) / 2)
      joined = nodeHash(this.#peaks.pop()!, joined);
    this.#peaks.push(joined);
    this.#size += 1;
  }

  /** The hash that stands for all leaves; that of nothing in an empty tree. */
  root(): Buffer {
    const last = this.#peaks.at(-1);
    if (last === undefined) return hash("sha256", "", "buffer");
    return this.#peaks.slice(0, -1).reduceRight((right, left) => nodeHash(left, right), last);
  }
}

function onesIn(size: number): number {
  let ones = 0;
  for (let rest = size; rest > 0; rest = Math.floor(rest / 2)) ones += rest % 2;
  return ones;
}

/** The largest power of two below n (n > 1). */
function split(n: number): number {
  let half = 1;
  while (half * 2 < n) half *= 2;
  return half;
}

function rootOf(leaves: readonly Buffer[]): Buffer {
  const tree = new Tree();
  for (const leaf of leaves) tree.add(leaf);
  return tree.root();
}

/** The way from leaf `index` (from 0) up to the root of all leaves, its sibling first (RFC 9162, 2.1.3.1). */
export function inclusionProof(leaves: readonly Buffer[], index: number): Buffer[] {
  if (leaves.length <= 1) return [];
  const half = split(leaves.length);
  const [left, right] = [leaves.slice(0, half), leaves.slice(half)];
  return index < half
    ? [...inclusionProof(left, index), rootOf(right)]
    : [...inclusionProof(right, index - half), rootOf(left)];
}

/**
 * That a tree grew by these leaves and changed nothing before them (RFC 9162, 2.1.4.1); empty when none was added, or
 * none stood before. Needs of the old leaves only the full subtrees.
 */
export function consistencyProof(old: Tree, added: readonly Buffer[]): Buffer[] {
  const peaks = [...old.peaks];
  if (old.size === 0 || added.length === 0) return [];
  const way = (m: number, leaves: readonly Buffer[], whole: boolean): Buffer[] => {
    if (leaves.length === 0) return whole ? [] : [new Tree(m, peaks).root()];
    const half = split(m + leaves.length);
    if (m <= half) return [...way(m, leaves.slice(0, half - m), whole), rootOf(leaves.slice(half - m))];
    const left = peaks.shift()!;
    return [...way(m - half, leaves, false), left];
  };
  return way(old.size, added, true);
}

/** The root that a leaf and its way up lead to; null when the way has another length (RFC 9162, 2.1.3.2). */
export function rootByInclusion(
  leaf: Buffer,
  index: number,
  size: number,
  proof: readonly Buffer[],
): Buffer | null {
  if (!(index >= 0 && index < size)) return null;
  const rest = [...proof];
  const up = (at: number, of: number): Buffer | null => {
    if (of === 1) return leaf;
    const half = split(of);
    const sibling = rest.pop();
    if (sibling === undefined) return null;
    const own = at < half ? up(at, half) : up(at - half, of - half);
    if (own === null) return null;
    return at < half ? nodeHash(own, sibling) : nodeHash(sibling, own);
  };
  const root = up(index, size);
  return rest.length === 0 ? root : null;
}

/** True when the proof leads from the root of `old` leaves to that of `size` (RFC 9162, 2.1.4.2). */
export function isConsistent(
  old: { size: number; root: Buffer },
  grown: { size: number; root: Buffer },
  proof: readonly Buffer[],
): boolean {
  if (old.size > grown.size || old.size < 0) return false;
  if (old.size === grown.size) return proof.length === 0 && old.root.equals(grown.root);
  if (old.size === 0) return proof.length === 0;
  const rest = [...proof];
  const up = (m: number, n: number, whole: boolean): { before: Buffer; after: Buffer } | null => {
    if (m === n) {
      const root = whole ? old.root : rest.pop();
      return root === undefined ? null : { before: root, after: root };
    }
    const half = split(n);
    const other = rest.pop();
    if (other === undefined) return null;
    if (m <= half) {
      const left = up(m, half, whole);
      return left && { before: left.before, after: nodeHash(left.after, other) };
    }
    const right = up(m - half, n - half, false);
    return right && { before: nodeHash(other, right.before), after: nodeHash(other, right.after) };
  };
  const roots = up(old.size, grown.size, true);
  return (
    roots !== null && rest.length === 0 && roots.before.equals(old.root) && roots.after.equals(grown.root)
  );
}
