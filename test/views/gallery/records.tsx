import { curveOf } from "../../../views/plots/curve.ts";
import { RecordsIndex } from "../../../views/records/index.tsx";
import { RecordPage } from "../../../views/records/show.tsx";

const claims = [
  { id: "ag-999", name: "silver 999" },
  { id: "au-750", name: "gold 750" },
];
const filters = { q: "", state: "", claim: "", from: "", to: "", mass: "", photo: "" };

const about = { subject: "214", seen: 9 };

export const recordsEmpty = (
  <RecordsIndex
    filters={{ ...filters, q: "harbour" }}
    claims={claims}
    rows={[]}
    found={0}
    all={214}
    narrowed
  />
);

export const records = (
  <RecordsIndex
    filters={filters}
    claims={claims}
    found={214}
    all={214}
    narrowed={false}
    next="/records?after=187"
    rows={(["consistent", "consistent-not-unique", "excluded", "inconclusive"] as const).map(
      (state, index) => ({
        id: `${214 - index}`,
        when: `3 March 2026, 10:1${index}`,
        ticket: `T-04${31 - index}`,
        piece: [
          "round, one ounce",
          "bar, 100 g, with serial number",
          "chain, hollow links",
          "thin hammered coin",
        ][index]!,
        mass: ["31.1035 g", "100.02 g", "12.9 g", "1.204 g"][index]!,
        density: ["10.488 ± 0.014", "19.28 ± 0.11", "11.62 ± 0.09", "16.9 ± 0.6"][index]!,
        claimName: ["silver 999", "gold 999", "gold 585", "gold 900"][index]!,
        state,
        photos: index,
        ...(index === 2 ? { broughtBy: "book 7, page 31" } : {}),
        ...(index === 1 ? { since: "amended" as const } : {}),
      }),
    )}
  />
);

export const record = (
  <RecordPage
    id="214"
    ticket="T-0431"
    piece="round, one ounce"
    description="edge reeded, two small nicks at 5 o'clock"
    saidByCustomer="silver, bought at the quay market"
    when="3 March 2026, 10:14"
    operator="kl"
    place="Saltmouth Assay Counter, window bench"
    method="hung"
    conditions={[
      ["Water", "distilled, 21.4 ± 0.1 °C"],
      ["Air", "1.19 kg/m³"],
      ["Balance", "simulated balance, smallest step 0.0001 g"],
      ["Hanger", "0.1 mm wire, zeroed immersed"],
      ["Check of the day", "in order, 3 March, 08:02"],
    ]}
    result={{
      state: "consistent-not-unique",
      claim: { metal: "ag-999" },
      answer: "The density fits silver 999 and also another thing.",
      claimStands: true,
      alternatives: [
        {
          id: "pb-core",
          called: { metal: "pb-core" },
          kind: "cored",
          occurrence: "common",
          likelihoodRatio: 0.4,
          why: { code: "alternative.why.band", params: { low_g_cm3: 10.5, high_g_cm3: 11.34 } },
          separatedBy: {
            code: "separation.ring",
            params: { dull: { metal: "pb-core" }, other: { metal: "ag-999" } },
          },
        },
      ],
      fineness: { element: "Ag", permille: [985, 1000], fine_g: [30.64, 31.11] },
      cautions: ["lead"],
    }}
    measured={{
      density: "10.488 ± 0.014 g/cm³",
      densityWords: "at 21.4 °C; with 95.45 % confidence between 10.460 and 10.516 g/cm³, by simulation",
      results: [
        ["Density at 20 °C", "10.489 g/cm³"],
        ["Volume", "2.9656 ± 0.0041 cm³"],
      ],
      plot: {
        measured: {
          value: 10.488,
          u: 0.0142,
          interval: [10.46, 10.516],
          confidence: 0.9545,
          curve: curveOf((x) => 1 / (1 + Math.exp(-120 * (x - 10.488))), 10.43, 10.545),
        },
        claimId: "ag-999",
        bands: [
          { id: "ag-999", name: "silver 999", low: 10.467, high: 10.53, notExcluded: true },
          { id: "pb-core", name: "lead core, silver skin", low: 10.5, high: 11.34, notExcluded: true },
          { id: "ag-925", name: "silver 925", low: 10.302, high: 10.395, notExcluded: false },
        ],
      },
    }}
    budget={[
      { input: "bubble allowance", value: "0 mg", u: "0.5 mg", contribution: 0.0113, share: 0.63 },
      {
        input: "repeatability, immersed",
        value: "28.1435 g",
        u: "0.0003 g",
        contribution: 0.0066,
        share: 0.22,
      },
      { input: "water temperature", value: "21.4 °C", u: "0.06 °C", contribution: 0.0054, share: 0.15 },
    ]}
    repeats={{
      unit: "g/cm³",
      decimals: 3,
      trend: "The last three agree.",
      repeats: [
        { value: 10.471, state: "left-out", because: "still climbing" },
        { value: 10.486, state: "kept" },
        { value: 10.488, state: "kept" },
        { value: 10.49, state: "kept" },
      ],
    }}
    captures={[
      {
        id: "c1",
        role: "dry",
        reading: "31.1035 g",
        when: "10:12:04",
        from: "simulated balance",
        settled: "its own mark",
        lines: [
          { at: "10:12:03.912", raw: "+   31.1035 g  \\r\\n" },
          { at: "10:12:04.112", raw: "+   31.1035 g  \\r\\n" },
        ],
      },
      {
        id: "c2",
        role: "immersed",
        reading: "28.1402 g",
        when: "10:13:10",
        from: "simulated balance",
        settled: "its own mark",
        lines: [],
        voided: { when: "10:13:31", reason: "touched the wall" },
      },
      {
        id: "c3",
        role: "immersed",
        reading: "28.1435 g",
        when: "10:13:55",
        from: "typed",
        settled: "taken by hand",
        lines: [],
      },
    ]}
    warnings={["The water is 1.2 °C warmer than the room."]}
    notes={[{ when: "10:14", by: "kl", message: "Looked at the edge with a loupe: no seam." }]}
    assay={{
      href: "/records/x/laboratory",
      facts: [
        ["Fineness by the laboratory", "585.2 ± 0.4 ‰ gold (k = 2, as the laboratory states it)"],
        ["The laboratory lies", "inside, 31 ‰ from the nearer end"],
      ],
    }}
    photos={[]}
    excludePhoto={{ action: (entry) => `/photos/${entry}`, csrfToken: "gallery", about, asksBy: true }}
    amendable={[{ id: "c3", role: "immersed", text: "28.1435", unit: "g" }]}
    excludedPhotos={["it shows another piece"]}
    photoForm={{ action: "/records/214/photos", csrfToken: "gallery", about, megabytes: 12, shows: "" }}
    amendments={[
      {
        id: "a1",
        when: "4 March 2026, 09:00",
        by: "kl",
        reason: "ticket misread",
        changes: [{ what: "Ticket", from: "T-0437", to: "T-0431" }],
      },
    ]}
    reports={[{ number: "2026-0031", href: "/reports/2026-0031", when: "3 March 2026" }]}
    chain={{
      sequence: 1187,
      hash: "8f2d6f0e6c1c4f5bb1f1f4f1f2a7c9d0e3b5a6978812345678abcdef01234567",
      previous: "1b7a0c9f8e7d6c5b4a39281706f5e4d3c2b1a09f8e7d6c5b4a39281706f5e4d3",
    }}
    versions={[["Library of metals", "2026-11"]]}
    csrfToken="gallery"
    stepKey="s1"
    version={9}
  />
);
