import { createHash } from "node:crypto";
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  consistencyProof,
  inclusionProof,
  isConsistent,
  leafHash,
  rootByInclusion,
  Tree,
} from "../../../server/ledger/tree.ts";

const sha = (...parts: Uint8Array[]) => createHash("sha256").update(Buffer.concat(parts)).digest();

/** MTH of RFC 9162, 2.1.1, written from its text alone. */
function headOf(leaves: Buffer[]): Buffer {
  if (leaves.length === 0) return sha();
  if (leaves.length === 1) return sha(Buffer.of(0), leaves[0] as Buffer);
  let k = 1;
  while (k * 2 < leaves.length) k *= 2;
  return sha(Buffer.of(1), headOf(leaves.slice(0, k)), headOf(leaves.slice(k)));
}

/** The verification of an inclusion proof as RFC 9162, 2.1.3.2, words it: numbers fn and sn, bit by bit. */
function includes(leaf: Buffer, index: number, size: number, proof: Buffer[], root: Buffer): boolean {
  if (index >= size) return false;
  let [fn, sn, r] = [index, size - 1, sha(Buffer.of(0), leaf)];
  for (const p of proof) {
    if (sn === 0) return false;
    if (fn % 2 === 1 || fn === sn) {
      r = sha(Buffer.of(1), p, r);
      while (fn % 2 === 0 && fn !== 0) [fn, sn] = [fn >> 1, sn >> 1];
    } else r = sha(Buffer.of(1), r, p);
    [fn, sn] = [fn >> 1, sn >> 1];
  }
  return sn === 0 && r.equals(root);
}

/** The verification of a consistency proof as RFC 9162, 2.1.4.2, words it. */
function consistent(first: number, second: number, heads: [Buffer, Buffer], given: Buffer[]): boolean {
  const proof = Number.isInteger(Math.log2(first)) ? [heads[0], ...given] : [...given];
  let [fn, sn] = [first - 1, second - 1];
  while (fn % 2 === 1) [fn, sn] = [fn >> 1, sn >> 1];
  const start = proof.shift();
  if (start === undefined) return false;
  let [fr, sr] = [start, start];
  for (const c of proof) {
    if (sn === 0) return false;
    if (fn % 2 === 1 || fn === sn) {
      [fr, sr] = [sha(Buffer.of(1), c, fr), sha(Buffer.of(1), c, sr)];
      while (fn % 2 === 0 && fn !== 0) [fn, sn] = [fn >> 1, sn >> 1];
    } else sr = sha(Buffer.of(1), sr, c);
    [fn, sn] = [fn >> 1, sn >> 1];
  }
  return sn === 0 && fr.equals(heads[0]) && sr.equals(heads[1]);
}

const data = (n: number) => Array.from({ length: n }, (_, i) => Buffer.from(`leaf ${i}`));
const grown = (leaves: Buffer[]) => {
  const tree = new Tree();
  for (const leaf of leaves) tree.add(leafHash(leaf));
  return tree;
};

test("a tree that grows leaf by leaf has the head of RFC 9162 at every size, also when it goes on from its subtrees", () => {
  const leaves = data(70);
  let tree = new Tree();
  for (const [n, leaf] of leaves.entries()) {
    expect(tree.root()).toEqual(headOf(leaves.slice(0, n)));
    tree = new Tree(tree.size, tree.peaks);
    tree.add(leafHash(leaf));
  }
  expect(() => new Tree(7, tree.peaks.slice(0, 2))).toThrow(RangeError);
});

test("every inclusion proof holds by the words of RFC 9162, and by none for another place", () => {
  for (let size = 1; size <= 40; size += 1) {
    const leaves = data(size);
    const hashes = leaves.map(leafHash);
    for (const [index, leaf] of leaves.entries()) {
      const proof = inclusionProof(hashes, index);
      expect(includes(leaf, index, size, proof, headOf(leaves))).toBe(true);
      expect(rootByInclusion(leafHash(leaf), index, size, proof)).toEqual(headOf(leaves));
      const other = rootByInclusion(leafHash(leaf), (index + 1) % size, size, proof);
      expect(size > 1 && other !== null && other.equals(headOf(leaves))).toBe(false);
    }
  }
});

test("every consistency proof holds by the words of RFC 9162, and fails once anything in it is changed", () => {
  for (let size = 1; size <= 40; size += 1)
    for (let old = 1; old < size; old += 1) {
      const leaves = data(size);
      const [before, after] = [headOf(leaves.slice(0, old)), headOf(leaves)];
      const proof = consistencyProof(grown(leaves.slice(0, old)), leaves.slice(old).map(leafHash));
      expect(consistent(old, size, [before, after], proof), `${old} to ${size}`).toBe(true);
      const heads = [
        { size: old, root: before },
        { size, root: after },
      ] as const;
      expect(isConsistent(...heads, proof)).toBe(true);
      expect(isConsistent({ ...heads[0], root: after }, heads[1], proof)).toBe(false);
      for (const [place, hash] of proof.entries())
        expect(isConsistent(...heads, proof.with(place, leafHash(hash)))).toBe(false);
      expect(isConsistent(...heads, [...proof, after])).toBe(false);
    }
});

test("a place outside the tree and a proof of the wrong length for equal or empty trees fail, as RFC 9162 words it", () => {
  const leaves = data(5);
  const hashes = leaves.map(leafHash);
  const root = headOf(leaves);
  // 2.1.3.2, 1: a leaf index that is not below the size of the tree fails
  for (const index of [-1, 5, 6, Number.NaN])
    expect(rootByInclusion(hashes[0]!, index, 5, inclusionProof(hashes, 0))).toBeNull();
  // 2.1.4.2: trees of one size have an empty proof and one root; the empty tree is the beginning of every other
  const whole = { size: 5, root };
  expect(isConsistent(whole, whole, [])).toBe(true);
  expect(isConsistent(whole, whole, [root])).toBe(false);
  expect(isConsistent({ size: 5, root: hashes[0]! }, whole, [])).toBe(false);
  expect(isConsistent({ size: 0, root: headOf([]) }, whole, [])).toBe(true);
  expect(isConsistent({ size: 0, root: headOf([]) }, whole, [root])).toBe(false);
  expect(isConsistent({ size: 6, root }, whole, [])).toBe(false);
});

test("of two trees that differ in an old leaf no proof makes one the beginning of the other", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 300 }), fc.nat(), fc.nat(), (size, a, b) => {
      const leaves = data(size);
      const old = 1 + (a % (size - 1));
      const rewritten = leaves.with(b % old, Buffer.from("another"));
      const proof = consistencyProof(grown(rewritten.slice(0, old)), leaves.slice(old).map(leafHash));
      const heads = [headOf(leaves.slice(0, old)), headOf(rewritten)] as const;
      return !isConsistent({ size: old, root: heads[0] }, { size, root: heads[1] }, proof);
    }),
  );
});
