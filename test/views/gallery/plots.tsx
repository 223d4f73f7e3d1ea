import type { Band } from "../../../views/plots/bands.tsx";
import { BudgetBars } from "../../../views/plots/budget.tsx";
import { ControlChart } from "../../../views/plots/control-chart.tsx";
import { curveOf } from "../../../views/plots/curve.ts";
import { DensityAxis } from "../../../views/plots/density.tsx";
import { Fineness } from "../../../views/plots/fineness.tsx";
import { Repeats } from "../../../views/plots/repeats.tsx";

/** Invented results, only to look at. */
const bell = (value: number, u: number) =>
  curveOf((x) => 1 / (1 + Math.exp(-1.702 * ((x - value) / u))), value - 4 * u, value + 4 * u);

const measured = (value: number, u: number) => ({
  value,
  u,
  interval: [value - 2 * u, value + 2 * u] as const,
  confidence: 0.9545,
  curve: bell(value, u),
});

const silver: Band[] = [
  { id: "ag-999", name: "silver 999", low: 10.467, high: 10.53, notExcluded: true },
  { id: "ag-925", name: "silver 925", low: 10.302, high: 10.395, notExcluded: false },
  { id: "ag-958", name: "silver 958", low: 10.362, high: 10.456, notExcluded: true },
  { id: "pb-core", name: "lead core, silver skin", low: 10.5, high: 11.34, notExcluded: true },
  { id: "au-8y", name: "gold 8 ct yellow", low: 10.6, high: 11.3, notExcluded: false },
  { id: "mo", name: "molybdenum sheet", low: 10.16, high: 10.28, notExcluded: false },
  { id: "pb", name: "lead", low: 11.34, high: 11.35, notExcluded: false },
  { id: "cu", name: "copper", low: 8.89, high: 8.968, notExcluded: false },
  { id: "brass", name: "free-cutting brass", low: 8.46, high: 8.52, notExcluded: false },
  { id: "ag-800", name: "silver 800", low: 10.085, high: 10.176, notExcluded: false },
  { id: "bi", name: "bismuth", low: 9.747, high: 9.8, notExcluded: false },
];

const silverPiece = (
  <DensityAxis id="silver" measured={measured(10.488, 0.0142)} bands={silver} claimId="ag-999" />
);

export const plots = (
  <>
    <div class="sheet">{silverPiece}</div>
    <div class="sheet">
      <DensityAxis
        id="kitchen"
        caption="A kitchen scale: wide interval"
        measured={measured(10.1, 0.31)}
        bands={silver.map((band) => ({ ...band, notExcluded: band.high > 9.5 && band.low < 10.7 }))}
        claimId="ag-925"
      />
    </div>
    <div class="sheet">
      <DensityAxis
        id="gold"
        caption="Claim ruled out"
        locale="de"
        measured={measured(17.02, 0.021)}
        claimId="au-999"
        bands={[
          { id: "au-999", name: "Gold 999 fein", low: 19.22, high: 19.33, notExcluded: false },
          { id: "w", name: "Wolfram", low: 18.9, high: 19.35, notExcluded: false },
          { id: "wha", name: "Wolfram-Schwermetall 90", low: 16.85, high: 17.3, notExcluded: true },
          { id: "au-21y", name: "Gold 21 kt gelb", low: 16.8, high: 17.3, notExcluded: true },
          { id: "wcu-90", name: "Wolfram-Kupfer 90/10", low: 16.75, high: 17.27, notExcluded: true },
        ]}
      />
    </div>
    <div class="sheet">
      <DensityAxis
        id="sharp"
        caption="A fine balance: the hill on its own, widened axis; the claim off the axis"
        measured={measured(8.5311, 0.00071)}
        domain={[7.93, 9.13]}
        claimId="ag-999"
        bands={[
          { id: "ag-999", name: "silver 999", low: 10.467, high: 10.53, notExcluded: false },
          { id: "brass-c260", name: "cartridge brass", low: 8.5, high: 8.56, notExcluded: true },
          { id: "pb-sn", name: "lead and tin", low: 8.4, high: 11.3, notExcluded: true },
          { id: "brass-c360", name: "free-cutting brass", low: 8.46, high: 8.52, notExcluded: false },
        ]}
      />
    </div>
    <div class="sheet">
      <DensityAxis
        id="bands-only"
        caption="Before anything is measured"
        bands={silver.map(({ notExcluded: _, ...band }) => band)}
        claimId="ag-925"
      />
    </div>
    <div class="columns">
      <div class="sheet">
        <BudgetBars
          id="budget"
          inputs={[
            {
              input: "bubbles left on the piece",
              value: "0 mg",
              u: "1 mg",
              contribution: 0.0121,
              share: 0.62,
            },
            {
              input: "repeatability, immersed",
              value: "28.1435 g",
              u: "0.0003 g",
              contribution: 0.0065,
              share: 0.21,
            },
            {
              input: "resolution at load, dry",
              value: "31.1035 g",
              u: "0.00003 g",
              contribution: 0.0003,
              share: 0.004,
            },
            { input: "water temperature", value: "21.4 °C", u: "0.1 °C", contribution: 0.004, share: 0.12 },
            { input: "meniscus on the wire", value: "0 mg", u: "0.2 mg", contribution: 0.002, share: 0.03 },
            {
              input: "air density",
              value: "1.19 kg/m³",
              u: "0.017 kg/m³",
              contribution: 0.0009,
              share: 0.01,
            },
            { input: "dissolved air", value: "0", u: "0.001 kg/m³", contribution: 0.00001, share: 0.003 },
            { input: "water formula", value: "0", u: "0.0004 kg/m³", contribution: 0.00001, share: 0.002 },
            { input: "zero drift", value: "0", u: "0.00002 g", contribution: 0.00001, share: 0.001 },
          ]}
        />
      </div>
      <div class="sheet">
        <Repeats
          id="repeats"
          unit="g/cm³"
          decimals={3}
          mean={10.485}
          s={0.006}
          trend="The first was left out: it was still climbing."
          repeats={[
            { value: 10.41, state: "left-out", because: "still climbing" },
            { value: 10.479, state: "kept" },
            { value: 10.44, state: "voided", because: "touched the wall" },
            { value: 10.484, state: "kept" },
            { value: 10.491, state: "kept" },
          ]}
        />
      </div>
      <div class="sheet">
        <Fineness
          id="fineness"
          interval={[475, 628]}
          recipes={[
            { name: "all silver", low: 475, high: 492 },
            { name: "silver and copper, half each", low: 555, high: 572 },
            { name: "all copper", low: 612, high: 628 },
          ]}
          standards={[
            { fineness: 375, name: "375" },
            { fineness: 417, name: "417" },
            { fineness: 500, name: "500" },
            { fineness: 585, name: "585", claimed: true },
            { fineness: 750, name: "750" },
          ]}
        />
      </div>
    </div>
    <div class="sheet">
      <ControlChart
        id="chart"
        caption="Check weight 20 g, window bench"
        unit="g"
        decimals={4}
        points={[
          20.0001, 20.0, 19.9999, 20.0002, 20.0001, 20.0003, 20.0, 20.0007, 20.0001, 20.0002, 20.0003,
          20.0002, 20.00045, 20.0002,
        ].map((value, index) => ({
          when: `${index + 1} March 08:1${index % 10}`,
          value,
          attempt: index === 8 ? 2 : 1,
          outcome: index === 7 ? "action" : index === 12 ? "warning" : "inside",
          ...(index === 7 ? { note: "draught from the door" } : {}),
        }))}
        epochs={[
          { from: 0, mean: 20.0001, s: 0.00015, because: "first 7 checks", since: "1 March" },
          { from: 9, mean: 20.0002, s: 0.0001, because: "moved to the window", since: "10 March" },
        ]}
      />
    </div>
  </>
);
