import type { VNode } from "preact";
import { describe, expect, it } from "vitest";
import { tellerOf } from "../../../views/messages/tell.ts";
import { render } from "../../../views/page.tsx";
import { BudgetBars } from "../../../views/plots/budget.tsx";
import { ControlChart } from "../../../views/plots/control-chart.tsx";
import { curveOf } from "../../../views/plots/curve.ts";
import { DensityAxis, densityInWords } from "../../../views/plots/density.tsx";
import { domainOf } from "../../../views/plots/density-domain.ts";
import { Fineness } from "../../../views/plots/fineness.tsx";
import { Repeats } from "../../../views/plots/repeats.tsx";
import { policyBreaches } from "../markup.ts";

const t = tellerOf("en");

const plot = {
  id: "p",
  measured: {
    value: 10.364,
    u: 0.02,
    interval: [10.324, 10.404] as const,
    confidence: 0.9545,
    curve: curveOf((x) => 1 / (1 + Math.exp(-85 * (x - 10.364))), 10.28, 10.44),
  },
  bands: [
    { id: "ag-925", name: "silver 925", low: 10.302, high: 10.395, notExcluded: true },
    { id: "ag-900", name: "silver 900", low: 10.258, high: 10.351, notExcluded: true },
    { id: "au-8y", name: "gold 8 ct", low: 10.6, high: 11.3, notExcluded: false },
  ],
  claimId: "ag-925",
};

const drawn: Record<string, VNode> = {
  density: <DensityAxis {...plot} />,
  budget: (
    <BudgetBars
      id="b"
      inputs={[
        { input: "bubbles", value: "0 mg", u: "1 mg", contribution: 0.019, share: 0.996 },
        { input: "air density", value: "1.19 kg/m³", u: "0.02 kg/m³", contribution: 0.001, share: 0.004 },
      ]}
    />
  ),
  repeats: (
    <Repeats
      id="r"
      unit="g"
      decimals={4}
      trend="Still climbing."
      repeats={[
        { value: 2.97, state: "kept" },
        { value: 2.96, state: "voided", because: "touched the wall" },
      ]}
    />
  ),
  chart: (
    <ControlChart
      id="c"
      caption="Check weight"
      unit="g"
      decimals={4}
      epochs={[{ from: 0, mean: 20, s: 0.0001, because: "first", since: "1 March" }]}
      points={[
        { when: "1 March", value: 20.0005, attempt: 1, outcome: "action" },
        { when: "1 March", value: 20.0001, attempt: 2, outcome: "inside" },
      ]}
    />
  ),
  fineness: (
    <Fineness
      id="f"
      interval={[475, 628]}
      recipes={[{ name: "all silver", low: 475, high: 490 }]}
      standards={[{ fineness: 585, name: "585" }]}
    />
  ),
};

describe.each(Object.entries(drawn))("the %s plot", (_, vnode) => {
  const html = render(vnode);

  it("has a title, a description in words and the same as a table, for phone and page", () => {
    expect(html.match(/<title id="[^"]+">[^<]+<\/title><desc id="[^"]+">[^<]{10,}<\/desc>/g)).toHaveLength(2);
    expect(html).toMatch(/<details>.*<table>.*<th scope="row">/s);
  });

  it("carries no inline style, has unique ids, and refers only to ids that exist", () => {
    expect(policyBreaches(html)).toEqual([]);
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, name] of html.matchAll(/url\(#([^)]+)\)/g)) expect(ids).toContain(name);
    for (const [, names] of html.matchAll(/aria-labelledby="([^"]+)"/g))
      for (const name of (names ?? "").split(" ")) expect(ids).toContain(name);
  });

  it("draws only finite numbers", () => {
    expect(html).not.toMatch(/NaN|Infinity|undefined/);
  });
});

describe("the density axis", () => {
  it("says in words what is drawn", () => {
    expect(densityInWords(plot)).toBe(
      "Density 10.364 ± 0.040 g/cm³; with 95.45 % confidence 10.324 to 10.404 g/cm³. " +
        `${t("plots.claim-is", { name: "silver 925", band: "10.302 to 10.395" })} ${t("plots.not-excluded-are", { names: "silver 900", more: 0 })} ${t("plots.excluded-are", { count: 1 })}`,
    );
    expect(densityInWords({ ...plot, locale: "de" })).toContain("Dichte 10,364 ± 0,040 g/cm³");
  });

  it("says so when nothing on it is alive", () => {
    const bands = plot.bands.map((band) => ({ ...band, notExcluded: false }));
    expect(densityInWords({ ...plot, bands })).toContain(t("plots.none-left"));
    expect(render(<DensityAxis {...plot} bands={bands} />)).toContain(
      t("plots.band-claimed-out", { name: "silver 925" }),
    );
  });

  it("shows the whole interval, the claim and every band that is alive", () => {
    const [low, high] = domainOf(plot);
    expect(low).toBeLessThan(10.258);
    expect(high).toBeGreaterThan(10.404);
  });

  it("draws with neither bands nor a measurement", () => {
    expect(render(<DensityAxis id="e" bands={[]} />)).not.toMatch(/NaN|Infinity/);
  });

  it("draws a hill that is narrower than a letter, on the part of the axis that was asked for", () => {
    const html = render(<DensityAxis {...plot} domain={[5, 15]} />);
    expect(html).toMatch(/class="curve"/);
    expect(html).not.toMatch(/NaN|Infinity/);
  });

  it("fills in: outlines and the expected width before, curve and filled bands after", () => {
    const before = render(
      <DensityAxis
        id="q"
        expected={{ value: 10.348, halfWidth: 0.008 }}
        bands={plot.bands.map(({ notExcluded: _, ...band }) => band)}
        claimId="ag-925"
      />,
    );
    expect(before).toContain('class="expected"');
    expect(before).toContain('class="band-open"');
    expect(before).not.toMatch(/class="(curve|band-not-excluded|band-excluded)"/);
    const after = render(<DensityAxis {...plot} />);
    expect(after).toMatch(/class="curve".*class="band-claim".*class="band-not-excluded"/s);
    expect(after).not.toMatch(/class="(expected|band-open)"/);
  });

  it("points a bar outwards where its band goes on outside", () => {
    const bands = [{ id: "wide", name: "lead-tin cast", low: 7, high: 11.3, notExcluded: true }];
    const path = /<path d="(M[^"]+)" class="band-not-excluded"/;
    const [, inside] = path.exec(render(<DensityAxis {...plot} bands={bands} domain={[6, 12]} />)) ?? [];
    const [, beyond] = path.exec(render(<DensityAxis {...plot} bands={bands} domain={[10, 11]} />)) ?? [];
    expect(inside).not.toContain("L");
    expect(beyond?.match(/L/g)).toHaveLength(3);
  });

  it("draws no bar for a band off the axis but tells where it lies", () => {
    const html = render(<DensityAxis {...plot} domain={[10.5, 11.5]} />);
    expect(html).toContain(t("plots.off-axis", { band: "10.302 to 10.395" }));
    expect(html).not.toContain('class="band-claim"');
  });

  it("tells claim, not excluded and excluded apart by words and signs, not by colour alone", () => {
    const html = render(drawn.density ?? null);
    const names = new Set(
      [...html.matchAll(/<text[^>]*class="(?:strong|faint)"[^>]*>([^<]+)</g)].map(([, name]) => name),
    );
    for (const name of [t("plots.band-claimed", { name: "silver 925" }), "≈ silver 900", "≠ gold 8 ct"])
      expect(names).toContain(name);
    const states = [...html.matchAll(/<td>([^<]+)<\/td>/g)].map(([, state]) => state);
    expect(states).toEqual(expect.arrayContaining([t("plots.not-excluded"), t("plots.excluded")]));
  });
});

describe("the curve of a distribution", () => {
  it("has the area of the probability it covers", () => {
    const cdf = (x: number) => 1 / (1 + Math.exp(-x));
    const points = curveOf(cdf, -12, 12, 240);
    const area = points.reduce((sum, { height }) => sum + height * 0.1, 0);
    // the sum over 0.1-wide steps of a smooth hill misses far less than 1e-4
    expect(area).toBeCloseTo(1, 4);
  });
});

describe("limits on a control chart", () => {
  const points = [1, 2, 3, 4].map((day) => ({
    when: `${day} March`,
    value: 20 + day / 10_000,
    attempt: 1,
    outcome: "inside" as const,
  }));
  const epoch = { mean: 20.0002, s: 0.0001, because: "signed", since: "5 March" };
  const chart = (epochs: { from: number; mean: number; s: number; because: string; since: string }[]) =>
    render(<ControlChart id="c" caption="c" unit="g" decimals={4} points={points} epochs={epochs} />);
  /** left and right end of each line of a class, in the first drawing */
  const lines = (html: string, kind: string) =>
    [...html.split("</svg>")[0]!.matchAll(/<line ([^>]*)>/g)]
      .map(([, text = ""]) => text)
      .filter((text) => text.includes(`class="${kind}"`))
      .map((text) => ["x1", "x2"].map((end) => Number(new RegExp(`${end}="([\\d.]+)"`).exec(text)?.[1])));
  const lastPoint = (html: string) =>
    Number(/<polyline points="[^"]* ([\d.]+),[\d.]+"/.exec(html.split("</svg>")[0]!)?.[1]);

  it("that nobody was checked under yet stand right of all older points", () => {
    const html = chart([{ ...epoch, from: 4 }]);
    const [[from, to]] = lines(html, "mean") as [[number, number]];
    expect(from).toBeGreaterThan(lastPoint(html));
    expect(to).toBeGreaterThan(from);
  });

  it("begin between the point before and their own first one", () => {
    const html = chart([{ ...epoch, from: 3 }]);
    const [[from]] = lines(html, "mean") as [[number, number]];
    expect(from).toBeLessThan(lastPoint(html));
    expect(lines(html, "epoch")).toHaveLength(1);
  });

  it("that were replaced before any check are not drawn", () => {
    const html = chart([
      { ...epoch, from: 0 },
      { ...epoch, from: 4 },
      { ...epoch, from: 4 },
    ]);
    expect(lines(html, "mean")).toHaveLength(2);
  });
});
