import type { FastifyInstance } from "fastify";
import { BesideAsks, BesideNow } from "../../../views/balances/beside.tsx";
import { Finding, type FindingView } from "../../../views/balances/finding.tsx";
import { BalanceAsks, BalanceNow, LastLines, type NowView } from "../../../views/balances/now.tsx";
import { Ports } from "../../../views/balances/ports.tsx";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { render } from "../../../views/page.tsx";
import { LineSearch } from "../../station/line-search.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { besideOf, nowOf } from "./now-view.ts";
import { keptFor, portRows } from "./ports-view.ts";

/** What the Balances page shows while it is open, and the search for the settings of a line. */
export interface BalancesLive {
  stream: LiveStream;
  search: LineSearch;
  now(csrfToken: string): NowView;
}

/** Draws the parts of the page anew with every line and every exchange of a balance. */
export function balancesLive(app: FastifyInstance, { balance, findingMs }: BalanceParts): BalancesLive {
  const search = new LineSearch(balance, () => stream.changed("balance-now", "finding"), findingMs);
  // Looked up once for every exchange, and not with every line.
  let keptForNow: NowView["keptFor"];
  const lookUp = () => {
    keptForNow = balance.choice && keptFor(balance.choice.address);
  };
  lookUp();
  balance.onExchange(lookUp);
  const now = (token: string) => ({ ...nowOf(balance, token, app.zone()), keptFor: keptForNow });
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["balance-now", (token, locale) => render(<BalanceNow {...now(token)} />, locale)],
      ["balance-asks", (token, locale) => render(<BalanceAsks {...now(token)} />, locale)],
      ["last-lines", (token, locale) => render(<LastLines {...now(token)} />, locale)],
      ["beside-now", (_, locale) => render(<BesideNow beside={besideOf(balance, app.zone())} />, locale)],
      [
        "beside-asks",
        (token, locale) =>
          render(<BesideAsks beside={besideOf(balance, app.zone())} csrfToken={token} />, locale),
      ],
      ["ports", (token, locale) => render(<Ports ports={portRows(balance)} csrfToken={token} />, locale)],
      [
        "finding",
        (token, locale) => render(<Finding finding={findingView(search)} csrfToken={token} />, locale),
      ],
    ]),
    heartbeatSeconds * 1000,
  );
  const changed = () => stream.changed("balance-now", "balance-asks", "last-lines");
  balance.onLine(changed);
  balance.onExchange(changed);
  balance.onBeside((what) =>
    what === "line" ? stream.changed("beside-now") : stream.changed("beside-now", "beside-asks", "ports"),
  );
  app.addHook("preClose", async () => {
    search.stop();
    stream.close();
  });
  return { stream, search, now };
}

/** The search for the settings of a line, as its page draws it. */
export function findingView({ port, running, now, tried, outcome }: LineSearch): FindingView {
  return {
    ...(port === undefined ? {} : { port }),
    running,
    tried,
    ...(now === undefined ? {} : { now }),
    ...(outcome ? { message: outcome.message } : {}),
    ...(outcome?.line == null ? {} : { line: outcome.line }),
  };
}
