// Makes a large ledger, or measures one, in a process of its own, so that its memory is its own.
// Arguments: make FILE COUNT | measure FILE
import { DatabaseSync } from "@photostructure/sqlite";
import { canonicalJson } from "../../../server/ledger/canonical-json.ts";
import { signedText } from "../../../server/ledger/checkpoint.ts";
import { chainHash, contentHash } from "../../../server/ledger/entry.ts";
import { openLedger } from "../../../server/ledger/open-ledger.ts";
import { searchable } from "../../../server/ledger/search-words.ts";
import { signingKey } from "../../../server/ledger/signing-key.ts";

const [how, file, count = "1000000"] = process.argv.slice(2);
const claims = ["ag-925", "ag-999", "ag-900", "au-750", "au-585", "au-917", "el-cu", "pt-950"];
const states = ["consistent", "consistent-not-unique", "excluded", "inconclusive"];
const nouns = ["medal", "ring", "bar", "chain", "spoon", "cup", "coin", "brooch", "bracelet", "dish"];
const open = (bench) => openLedger({ file, now: () => new Date(), bench });

// Seeded, so that the same ledger is made every time (linear congruential generator of Numerical Recipes, from memory).
let state = 20260302;
const random = () => {
  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32;
};
const pick = (list) => list[Math.floor(random() * list.length)];

async function make() {
  const empty = await open("window bench");
  const { seq: firstSeq, hash: firstHash } = await empty.head();
  await empty.close();
  const key = signingKey(file.replace(/[^/]*$/, "signing-key.pem"));
  const db = new DatabaseSync(file);
  db.exec("pragma synchronous = off; pragma cache_size = -400000; drop trigger entries_no_replace");
  const closing = db.prepare("select seq, hash from entries order by seq desc limit 1").get();
  let { seq, hash } = closing ?? { seq: firstSeq, hash: firstHash };
  const entry = db.prepare("insert into entries values (?, ?, ?, ?, ?, ?, ?, null, ?, ?)");
  const record = db.prepare(
    `insert into records (seq, subject, entry_id, entry_hash, at, bench, ticket, description, claim, lot, operator,
       customer, state, mass_g, dry, dry_g, density_g_cm3, expanded_g_cm3, voided, amendments, photos, search)
     values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 0, 0, ?, ?)`,
  );
  const words = db.prepare("insert into record_words (rowid, search) values (?, ?)");
  const write = (id, at, kind, subject, body) => {
    seq += 1;
    const text = {
      seq,
      id,
      bench: "window bench",
      at,
      kind,
      subject,
      body: canonicalJson(body),
      origin: null,
    };
    const next = chainHash(contentHash(text), hash);
    entry.run(seq, id, "window bench", at, kind, subject, text.body, hash, next);
    hash = next;
  };
  db.exec("begin");
  for (let n = 0; n < Number(count); n += 1) {
    const at = new Date(Date.UTC(2016, 0, 1) + n * 300_000).toISOString();
    const [claim, finding] = [pick(claims), pick(states)];
    const density = 8 + random() * 12;
    const mass = random() * 100;
    const subject = `piece:${n}`;
    write(`r-${n}`, at, "result", subject, {
      request: {
        method: "hung",
        dry: { readings: [mass.toFixed(4)] },
        immersed: { readings: [(mass - mass / density).toFixed(4)] },
      },
      response: {
        density_g_cm3: density,
        u_g_cm3: 0.01,
        dof: 40,
        k: 2.06,
        expanded_g_cm3: 0.02,
        interval_g_cm3: [density - 0.02, density + 0.02],
        interval_from: "gum",
        mass_g: mass,
        finding: { claim, state: finding, because: "as the density says" },
      },
      versions: { program: "0.1.0", metals: "1" },
    });
    const ticket = `H-${String(n).padStart(7, "0")}`;
    const description = `${pick(nouns)} ${pick(nouns)} lot ${Math.floor(n / 200)}`;
    const customer = `customer ${n % 997}`;
    const search = searchable(ticket, description, claim, customer, subject);
    record.run(
      seq,
      subject,
      `r-${n}`,
      hash,
      at,
      "window bench",
      ticket,
      description,
      claim,
      `lot ${Math.floor(n / 200)}`,
      "counter 2",
      customer,
      finding,
      mass,
      `${mass.toFixed(4)} g`,
      Number(mass.toFixed(4)),
      density,
      0.02,
      n % 3 === 0 ? 1 : 0,
      search,
    );
    words.run(seq, search);
    if (n % 90 === 89)
      write(`checkpoint-${hash}`, at, "checkpoint", "bench:window bench", {
        seq,
        hash,
        keyId: key.keyId,
        signature: key.sign(signedText(seq, hash)),
      });
    if (n % 20_000 === 19_999) db.exec("commit; begin");
  }
  db.exec("commit; pragma wal_checkpoint(truncate)");
}

const percentile = (times, share) =>
  times.sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * share))];

async function timed(times, work) {
  const began = performance.now();
  const result = await work();
  times.push(performance.now() - began);
  return result;
}

async function measure() {
  const began = performance.now();
  const ledger = await open("window bench");
  const openMs = performance.now() - began;
  const list = [];
  const filter = [];
  const search = [];
  const append = [];
  for (let n = 0; n < 200; n += 1) {
    const before = Math.floor(random() * 1e6);
    await timed(list, () => ledger.records({ page: { size: 50, ...(n % 2 ? { before } : {}) } }));
    const filters = [
      { claim: pick(claims) },
      { state: pick(states), claim: pick(claims) },
      { lot: `lot ${n}` },
      { from: "2018-01-01", until: "2018-02-01" },
      { dryFromG: (n * 7) % 100, dryToG: ((n * 7) % 100) + 0.01 },
      { dryFromG: 5, dryToG: 95 },
      { dryFromG: 31, dryToG: 31.2, photo: true, from: "2018-01-01", until: "2018-03-01" },
    ][n % 7];
    await timed(filter, () => ledger.records({ filters }));
    const text = [
      pick(nouns),
      `${pick(nouns)} ${pick(nouns)}`,
      `H-${String(before).padStart(7, "0")}`,
      `lot ${n}`,
      "h",
      `${pick(nouns)} 99`,
      pick(nouns).slice(0, 3),
    ][n % 7];
    await timed(search, () =>
      ledger.records({ search: text, ...(n % 3 === 0 ? { filters: { claim: pick(claims) } } : {}) }),
    );
  }
  for (let n = 0; n < 1000; n += 1)
    await timed(append, () => ledger.append("note", `piece:${n}`, { text: `seen again ${n}` }));
  const result = {
    openMs,
    listP95: percentile(list, 0.95),
    filterP95: percentile(filter, 0.95),
    searchP95: percentile(search, 0.95),
    searchMax: Math.max(...search),
    appendP99: percentile(append, 0.99),
  };
  const verify = [];
  const found = await timed(verify, () => ledger.verify());
  const memoryMB = process.resourceUsage().maxRSS / 1024;
  await ledger.close();
  console.log(
    JSON.stringify({
      ...result,
      verifySeconds: verify[0] / 1000,
      good: found.good,
      entries: found.entries,
      says: found.says,
      memoryMB,
    }),
  );
}

await (how === "make" ? make() : measure());
