// A bench in a process of its own: it opens the ledger and captures one weighing after another.
// Arguments: FILE HOW, where HOW is
//   capture  until it is killed or the disk refuses; prints "saved SEQ ID" only after the append has resolved
//   open     opens and closes
//   check    opens what a bench left behind, looks for the entries of a third argument, checks the chain, closes; in a
//            process of its own, as a connection that this one has closed may still tidy the files up later
//   nobody   gives up root's rights first, as file permissions do not bind root; then as capture
import { writeSync } from "node:fs";
import { openLedger } from "../../../server/ledger/open-ledger.ts";

const [file, how, acknowledged] = process.argv.slice(2);
const say = (line) => writeSync(1, `${line}\n`);

if (how === "nobody" && process.getuid() === 0) {
  process.setgid(65534);
  process.setuid(65534);
}

const capture = (grams) => ({
  what: "immersed",
  reading: { text: grams, unit: "g", grams },
  source: "balance",
  lines: [
    {
      at: new Date().toISOString(),
      monotonicMs: performance.now(),
      raw: `+ ${grams} g\\r\\n`.padEnd(200, "."),
    },
  ],
});

try {
  const ledger = await openLedger({
    file,
    now: () => new Date(),
    bench: "window bench",
    newId: () => crypto.randomUUID(),
  });
  say(`opened ${ledger.found.length}`);
  if (how === "check") {
    const missing = [];
    for (const { seq, id } of JSON.parse(acknowledged))
      if ((await ledger.entry(id))?.seq !== seq) missing.push(seq);
    const [last] = await ledger.entries({ kind: "capture", newestFirst: true, limit: 1 });
    const chain = await ledger.verify();
    say(`checked ${JSON.stringify({ found: ledger.found, missing, chain, last: last?.seq ?? 0 })}`);
  }
  const only = how === "open" || how === "check";
  if (only) await ledger.close();
  for (let i = 0; !only && i < 100_000; i += 1) {
    try {
      const entry = await ledger.append(
        "capture",
        `piece:${process.pid}`,
        capture((28 + (i % 1000) / 1000).toFixed(3)),
      );
      say(`saved ${entry.seq} ${entry.id}`);
    } catch (trouble) {
      say(`trouble ${trouble.kind} ${trouble.code} ${JSON.stringify(trouble.params)}`);
      const head = await ledger.head();
      say(`still readable up to ${head.seq}`);
      process.exit(3);
    }
  }
} catch (trouble) {
  say(`trouble ${trouble.kind} ${trouble.code} ${JSON.stringify(trouble.params)}`);
  process.exit(4);
}
