import { setImmediate as nextTurn } from "node:timers/promises";
import { contentText } from "./entry.ts";
import type { Store } from "./tables.ts";
import { inclusionProof, leafHash, Tree } from "./tree.ts";

/** Leaves of a tile: a full one has a root that never changes again, so it is worked out once. */
const tileLeaves = 256;

/** Proofs that entries stand in the tree, without keeping or reading all of its leaves for each of them. */
export class Tiles {
  readonly #db: Store["db"];
  readonly #roots: Buffer[] = [];

  constructor({ db }: Pick<Store, "db">) {
    this.#db = db;
  }

  /** The ways up from these entries, by their row, to the root of the first `size` entries, each sibling first. */
  async inclusionOf(rows: readonly number[], size: number): Promise<Map<number, Buffer[]>> {
    const roots = await this.#rootsUpTo(size);
    const found = new Map<number, Buffer[]>();
    let [tile, leaves] = [-1, [] as Buffer[]];
    for (const row of rows) {
      const index = row - 1;
      const own = Math.floor(index / tileLeaves);
      if (own !== tile) [tile, leaves] = [own, await this.#leavesOf(own, size)];
      found.set(row, [...inclusionProof(leaves, index % tileLeaves), ...inclusionProof(roots, own)]);
    }
    return found;
  }

  async #rootsUpTo(size: number): Promise<Buffer[]> {
    const full = Math.floor(size / tileLeaves);
    for (let tile = this.#roots.length; tile < full; tile += 1) {
      const root = rootOf(await this.#leavesOf(tile, size));
      this.#roots[tile] = root;
      await nextTurn();
    }
    const roots = this.#roots.slice(0, full);
    return size % tileLeaves === 0 ? roots : [...roots, rootOf(await this.#leavesOf(full, size))];
  }

  async #leavesOf(tile: number, size: number): Promise<Buffer[]> {
    const rows = await this.#db
      .selectFrom("entries")
      .selectAll()
      .where("seq", ">", tile * tileLeaves)
      .where("seq", "<=", Math.min(size, (tile + 1) * tileLeaves))
      .orderBy("seq")
      .execute();
    return rows.map((row) => leafHash(contentText(row)));
  }
}

function rootOf(leaves: readonly Buffer[]): Buffer {
  const tree = new Tree();
  for (const leaf of leaves) tree.add(leaf);
  return tree.root();
}
