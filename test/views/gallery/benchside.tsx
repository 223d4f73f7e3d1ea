import { testChoices } from "../../../server/web/evidence/test-choices.ts";
import { Asking } from "../../../views/balances/asking.tsx";
import { BalancesIndex } from "../../../views/balances/index.tsx";
import { Learning } from "../../../views/balances/learning.tsx";
import { CheckForm } from "../../../views/checks/form.tsx";
import { ChecksIndex } from "../../../views/checks/index.tsx";
import { CustomerWindow, Indication } from "../../../views/customer/index.tsx";
import { EvidenceSheet } from "../../../views/evidence/index.tsx";
import { FirstStart } from "../../../views/first-start/index.tsx";
import { LotsIndex } from "../../../views/lots/index.tsx";
import { LotPage } from "../../../views/lots/show.tsx";
import { MetalsIndex } from "../../../views/metals/index.tsx";
import { MetalPage } from "../../../views/metals/show.tsx";
import { FinenessPage } from "../../../views/plan/fineness.tsx";
import { Plan } from "../../../views/plan/index.tsx";
import { TwoBodies } from "../../../views/plan/two-bodies.tsx";
import { Settings } from "../../../views/settings/index.tsx";
import { SettlementPage } from "../../../views/settlements/page.tsx";
import { trustSources } from "../../../views/settlements/view.ts";

const csrfToken = "gallery";
const about = { subject: "piece-1", seen: 3 };
const units = ["g", "kg", "mg", "ct", "ozt", "dwt"];
const claims = [
  { id: "ag-999", name: "silver 999" },
  { id: "au-585", name: "gold 585" },
];

const metals = [
  { id: "el-cu", name: "Copper", low: 8.89, nominal: 8.94, high: 8.968 },
  { id: "ag-925", name: "Silver 925", low: 10.302, nominal: 10.364, high: 10.395 },
  { id: "ag-999", name: "Silver 999", low: 10.467, nominal: 10.498, high: 10.53 },
  { id: "el-pb", name: "Lead", low: 11.34, nominal: 11.34, high: 11.35 },
  { id: "au-585", name: "Gold 585, any recipe", low: 12.4, nominal: 13.2, high: 14.6 },
  { id: "el-w", name: "Tungsten", low: 19.1, nominal: 19.25, high: 19.35 },
  { id: "au-999", name: "Gold 999 fine", low: 19.22, nominal: 19.28, high: 19.33 },
];

export const metalsIndex = (
  <MetalsIndex
    q=""
    family=""
    density=""
    families={[{ id: "silver", name: "silver" }]}
    all={metals.length}
    libraryVersion="2026-11"
    rows={metals.map((metal, index) => ({
      ...metal,
      family: "metal",
      from: index % 3 === 0 ? "from-memory" : "seen",
    }))}
  />
);

export const metalPage = (
  <MetalPage
    id="el-pb"
    name="Lead"
    family="lead and tin"
    low={11.34}
    nominal={11.34}
    high={11.35}
    composition={[{ element: "Pb", nominal: "1", range: "1 – 1" }]}
    magnetism="not pulled"
    colour="grey"
    conductivity="8.3 % IACS"
    likelihood="common"
    figures={[{ figure: "nominal", value: "11.34 g/cm³", from: { code: "metal.provenance.from-memory" } }]}
    fromMemory={1}
    risks={[{ expanded: "± 0.01 g/cm³", wrong: "1.2", unseen: "1.1", rightly: "0.3" }]}
    notes={[]}
    hazards={["lead"]}
    recipes={[]}
    neighbours={metals.slice(1, 5).map(({ id, name, low, high }) => ({ id, name, low, high }))}
    alternatives={[
      {
        id: "au-375",
        name: "gold 375",
        likelihood: "often",
        worth: "160,000 %",
        separatedBy: {
          code: "separation.ring",
          params: { dull: { metal: "el-pb" }, other: { metal: "au-375" } },
        },
      },
    ]}
  />
);

export const plan = (
  <Plan
    methods={["displaced", "hung", "flask"]}
    units={units}
    claims={claims}
    problems={[]}
    more={[
      { href: "/plan/two-bodies", label: "A piece of two bodies" },
      { href: "/plan/fineness", label: "Fineness from a density" },
    ]}
    form={{
      method: "displaced",
      claim: "ag-999",
      mass: "31,1",
      massUnit: "g",
      readability: "0.1",
      readabilityUnit: "g",
      repeatability: "",
      pieces: "1",
    }}
    answer={{
      message: ["This scale can tell silver from copper here, not 999 from 925."],
      facts: [
        ["Rise to expect", "2.96 g"],
        ["Your scale shows", "2.9 to 3.0 g"],
        ["Uncertainty of the density", "± 4 to 6 %"],
      ],
      apart: [
        { id: "cu", name: "Copper", expected: "3.5 g", isSeparated: true, message: ["half a gram more"] },
        {
          id: "ag-925",
          name: "Silver 925",
          expected: "3.0 g",
          isSeparated: false,
          message: ["one step of the scale at most"],
        },
      ],
      advice: [
        "A scale that shows 0.01 g answers 999 against 925 from 22 g on.",
        "Or weigh 20 equal rounds together.",
      ],
    }}
    table={{
      caption: "Smallest mass that answers, for silver 999 against",
      heads: ["Question", "0.1 g scale", "0.01 g scale"],
      rows: [
        ["brass", "14 g", "1.5 g"],
        ["copper", "19 g", "1.9 g"],
        ["silver 925", "220 g", "22 g"],
      ],
    }}
  />
);

export const planProblem = (
  <Plan
    methods={["displaced", "hung", "flask"]}
    units={units}
    claims={claims}
    form={{
      method: "hung",
      claim: "ag-999",
      mass: "thirty",
      massUnit: "g",
      readability: "0",
      readabilityUnit: "g",
      repeatability: "",
      pieces: "",
    }}
    problems={[
      {
        fieldId: "mass",
        error: { code: "form.number.not-a-number", params: { typed: "thirty" } },
      },
      {
        fieldId: "readability",
        error: "A smallest step of 0 g does not exist. Type what the last digit counts.",
      },
    ]}
  />
);

export const checks = (
  <ChecksIndex
    adjusted={[]}
    closed={{
      message: "The check weight was beyond 3 s twice.",
      since: "3 March, 08:10",
      todo: "Find the cause, then make the check again.",
    }}
    checks={[
      { kind: "repeatability", standing: "in order", last: "s = 0.12 mg on 1 March", due: "in 28 days" },
      { kind: "linearity", standing: "due", last: "1 February", due: "since Monday" },
      { kind: "eccentricity", standing: "never made" },
      { kind: "thermometer", standing: "warning", last: "0.4 °C on 2 March" },
      { kind: "reference", standing: "stopped", last: "10.31 g/cm³ on 3 March" },
    ]}
    profile={[["Repeatability, dry", "s = 0.12 mg with 9 degrees of freedom, 2026-03-01 by Mia"]]}
    charts={[]}
    lookBack={[{ id: "214", ticket: "T-0431", when: "3 March, 10:14" }]}
    problems={[]}
    typed={{}}
    csrfToken={csrfToken}
  />
);

export const checkForm = (
  <CheckForm
    kind="reference"
    units={units}
    unit="g"
    values={{ celsius: "21,4" }}
    problems={[{ fieldId: "dry-1", error: "Nothing was typed. Right: a number such as 31.10." }]}
    attempt={2}
    outcome={{
      message: "2.2013 ± 0.0009 g/cm³; stated 2.2010 ± 0.0005 g/cm³.",
      passed: true,
      facts: [["Passed at the", "2nd attempt"]],
    }}
    csrfToken={csrfToken}
    stepKey="s1"
  />
);

export const balances = (
  <BalancesIndex
    simulated={false}
    csrfToken={csrfToken}
    name="balance on /dev/serial/by-id/usb-bridge-0001"
    state="heard"
    message="31.1035 g, at rest, arrived at 10:12:03 UTC."
    readBy="the learned profile window balance, version 2"
    choice={{ address: "/dev/serial/by-id/usb-bridge-0001", line: "9600-8n1", asked: "P\\r\\n" }}
    checks={[
      { kind: "zero-check", message: "The balance was gone and is back. Check its zero before weighing on." },
    ]}
    commaAsked={{ raw: "   1,234 g\\r\\n" }}
    typed={{ port: "/dev/serial/by-id/usb-bridge-0001", line: "9600-8n1", flow: "none" }}
    finding={{
      port: "/dev/ttyS0",
      running: false,
      message: "The line is 2400-7e1; its lines are a number with its unit.",
      line: "2400-7e1",
      tried: [
        {
          line: "9600-8n1",
          bytes: 12,
          first: "\\x00\\xFE",
          message: "Characters came, but no readable lines.",
        },
      ],
    }}
    profiles={[{ name: "window balance", version: 2, href: "/balances/profiles/1", inUse: true }]}
    beside={[
      {
        address: "/dev/ttyS0",
        name: "balance on /dev/ttyS0",
        state: "heard",
        message: "28.14 g, at rest, arrived at 10:12:03 UTC.",
        checks: [],
      },
    ]}
    ports={[
      {
        stableName: "/dev/serial/by-id/usb-bridge-0001",
        todayName: "/dev/ttyUSB0",
        state: "in use",
        message: "named by the device itself: found again in any socket",
        chosen: true,
        beside: false,
        mayBeBeside: true,
        serial: true,
      },
      {
        stableName: "/dev/ttyS0",
        state: "free",
        message: "has no stable name: after unplugging it may have another number",
        chosen: false,
        beside: true,
        mayBeBeside: true,
        serial: true,
      },
    ]}
    lines={[
      { at: "10:12:04.112", raw: "OVER\\r\\n", meaning: "The balance says OVER: more than it can weigh." },
      { at: "10:12:03.912", raw: "+   31.1035 g  \\r\\n", meaning: "31.1035 g, at rest" },
    ]}
  />
);

export const learning = (
  <Learning
    balance="Balance on /dev/ttyUSB0"
    canListen={true}
    running={{
      message: "Hands off. Let the weight lie still. Then type what the display shows.",
      step: 3,
      of: 8,
      asksDisplayed: true,
      canLeaveOut: false,
      lineCame: true,
      lines: ["+    0.0000 g  \\r\\n", "+   31.1035 g  \\r\\n"],
      steps: [
        { name: "empty", stands: "done" },
        { name: "putting-on", stands: "done" },
        { name: "loaded", stands: "now" },
        { name: "below-zero", stands: "later" },
      ],
    }}
    csrfToken={csrfToken}
    learned={{
      facts: [
        "Every line ends with CR LF.",
        'While the number moves the line has a blank, at rest it has "g".',
      ],
      open: ["No value below zero was typed."],
      questions: [
        {
          id: "number",
          asks: "More than one number follows the weight. Which one does the display show?",
          options: [
            { value: "1", message: "number 1: N 31.1035" },
            { value: "2", message: "number 2: G 31.1035" },
          ],
        },
      ],
      samples: [{ meaning: "31.1035 g, stable", raw: "+   31.1035 g  \\r\\n" }],
      canBeKept: true,
    }}
  />
);

export const asking = (
  <Asking
    balance="balance on /dev/ttyUSB0"
    request="P\\r\\n"
    when="timer"
    everySeconds="0.5"
    consented={false}
    problem="Nothing was sent and nothing was kept: tick that the request only asks."
    asking={{ request: "P\\r\\n", lastAnswer: "Nothing came back yet." }}
    csrfToken={csrfToken}
  />
);

export const lots = (
  <LotsIndex
    units={units}
    claims={claims}
    values={{}}
    problems={[]}
    csrfToken={csrfToken}
    stepKey="s1"
    lots={[
      { id: "7", name: "Lot 7", opened: "3 March, 09:00", pieces: 31, gross: "412.36 g", state: "open" },
    ]}
  />
);

export const lot = (
  <LotPage
    id="7"
    name="Lot 7"
    current={{ ticket: "T-0431", step: "reading", role: "immersed" }}
    note="31 of 32 counted · claimed as gold 585"
    last={{ ticket: "T-0430", claimName: "gold 585", state: "consistent-not-unique" }}
    dots={[
      { ticket: "T-0428", value: 13.21, state: "consistent-not-unique" },
      { ticket: "T-0429", value: 8.62, state: "excluded" },
      { ticket: "T-0430", value: 13.24, state: "consistent-not-unique" },
    ]}
    bands={[{ id: "au-585", name: "gold 585", low: 12.5, high: 14.6 }]}
    handsFree={false}
    water="21.4"
    unit="g"
    units={units}
    live={<Indication indication="11.842 g" state="at rest" />}
    claims={claims}
    claim="au-585"
    claimsHere={[]}
    trays={(["consistent", "consistent-not-unique", "excluded", "inconclusive"] as const).map(
      (state, index) => ({
        state,
        pieces: [17, 9, 3, 2][index]!,
        mass: `${[210.4, 140.2, 41.8, 19.9][index]} g`,
        tickets: ["T-0430", "T-0428"],
      }),
    )}
    totals={{
      pieces: "31 of 32 counted",
      sum: "410.52 g",
      gross: "412.36 g",
      against: "1.84 g missing: one piece is not weighed yet, or one was weighed twice",
      fine: ["231.4 to 246.0 g gold"],
    }}
    checks={[
      {
        message: { code: "lot-check.same-mass", params: { tickets: 2, mass_g: 12.9 } },
        remedy: { code: "lot-check.same-mass-remedy" },
        tickets: ["T-0411", "T-0412"],
      },
    ]}
    items={[
      {
        recordId: "214",
        ticket: "T-0430",
        claimName: "gold 585",
        dry: "12.90 g",
        density: "13.1 ± 0.2",
        state: "consistent",
        fine: "7.5 g",
        flags: [],
      },
      {
        ticket: "T-0429",
        claimName: "gold 585",
        dry: "8.11 g",
        flags: [{ name: "typed" }, { name: "same mass", cleared: "laid side by side" }],
      },
    ]}
    flagNames={[{ id: "typed", name: "typed" }]}
    closingAsks={[]}
    nextTicket="T-0432"
    csrfToken={csrfToken}
    about={about}
    version={12}
    stopped={[]}
  />
);

export const payout = (
  <SettlementPage
    lotId="7"
    lotName="Lot 7"
    isClosed={false}
    currency=""
    trust={{ order: trustSources, pays: "low", narrowed: false }}
    sent={undefined}
    values={{}}
    problems={[]}
    closed={[]}
    priceVersions={["3 March 2026, 09:31: gold 100 crowns per troy ounce"]}
    said={[]}
    meltedIn={[]}
    melts={[]}
    questions={[]}
    languages={[{ id: "en", name: "English" }]}
    sheet={{
      sums: [
        ["Fine gold", "13.23 to 22.27 g"],
        ["Price paid", "92 % of 2650.00 EUR per troy ounce"],
      ],
      facts: [["Price locked", "3 March 2026, 09:31"]],
      rows: [
        {
          what: "gold, 12 pieces",
          net: "410.52 g",
          fineness: "564 – 599 ‰",
          restsOn: "density",
          fine: "231.4 g",
          payLow: "684.45",
          payHigh: "727.63",
        },
      ],
      fees: [{ what: "Fee, gold", amount: "−5.00" }],
      totalLow: "679.45",
      totalHigh: "722.63",
      paid: "679.45",
      paysBy: "Of each density interval the low end is paid.",
      against: [],
      leftOut: [{ id: "r1", ticket: "T-0412", mass: "3.10 g", why: "what it is claimed as is excluded" }],
    }}
    csrfToken={csrfToken}
    about={about}
  />
);

export const settings = (
  <Settings
    theme="auto"
    locale="en"
    keys
    method="displaced"
    metal="silver"
    metals={[
      { id: "silver", name: "Silver" },
      { id: "any", name: "All sorts" },
    ]}
    water="distilled"
    waters={[
      { id: "distilled", name: "distilled" },
      { id: "tap", name: "from the tap" },
    ]}
    numbers={{
      balance: [
        { name: "repeatabilityGrams", label: "Repeatability", hint: "dry", unit: "g", value: "0.01" },
        { name: "linearityGrams", label: "Linearity, plus or minus", unit: "g", value: "0.02" },
      ],
      around: [{ name: "altitudeMetres", label: "Height above the sea", unit: "m", value: "4" }],
    }}
    rule={{ kind: "guard-band", multiple: "1" }}
    secondPerson={{ massG: "50", worth: "", change: "" }}
    place={{ timeZone: "", currency: "EUR" }}
    ownZone="Europe/Berlin"
    scaleStep="0.01"
    scaleStepUnit="g"
    instruments="conductivity"
    secondUnit="dwt"
    units={units}
    contact=""
    accreditedBy=""
    accreditation=""
    organisation="Saltmouth Assay Counter"
    address="2 Quay Steps, Saltmouth"
    verifiedScale=""
    verifiedUntil=""
    storage={["41 GB free.", "Last backup: 2 March, 18:00."]}
    problems={[]}
    demo
    csrfToken={csrfToken}
  />
);

export const firstStart = (
  <FirstStart
    csrfToken={csrfToken}
    metals={[
      { id: "silver", name: "Silver" },
      { id: "gold", name: "Gold" },
      { id: "platinum", name: "Platinum and palladium" },
      { id: "any", name: "All sorts" },
    ]}
  />
);

export const customer = (
  <CustomerWindow
    indication="31.1035 g"
    state="at rest"
    piece="T-0431 round, one ounce"
    kept="31.1035 g"
    prices={[
      {
        metal: "silver",
        price: "30.12 EUR per troy ounce",
        rate: "of which 95 % is paid",
        from: "harbour board, as of 2026-03-02 09:30; locked 2026-03-02 09:31:12 UTC",
      },
    ]}
    scale={{ number: "S-118", validUntil: "31 December 2027" }}
    heartbeatSeconds={2}
    demo={false}
  />
);

export const evidence = (
  <EvidenceSheet
    choices={testChoices}
    action="/records/214/evidence"
    made={[
      {
        id: "e1",
        kind: "magnet",
        found: { code: "test.found.magnet-none" },
        also: [],
        when: "10:15",
        excludes: [{ metal: "steel-plate" }],
      },
      {
        id: "e2",
        kind: "ring",
        found: { code: "test.found.ring-clear" },
        also: ["like a bell"],
        when: "10:16",
        excludes: [],
      },
    ]}
    next={[{ code: "answer.next.conductivity" }, { code: "answer.next.sound" }]}
    csrfToken={csrfToken}
    about={about}
  />
);

export const twoBodies = (
  <TwoBodies
    question="masses"
    values={{
      massG: "41.3",
      density: "3.9",
      uDensity: "0.05",
      knownMassG: "",
      knownDensity: "",
      uKnownDensity: "",
      alloy: "",
      first: "18.5",
      uFirst: "0.5",
      second: "2.65",
      uSecond: "0.01",
    }}
    problems={[]}
    claims={[{ id: "au-750", name: "Gold 750 (18 ct)" }]}
    answer={{ message: "About 15.4 g of gold in 25.9 g of quartz.", facts: [["Gold", "15.4 ± 0.7 g"]] }}
  />
);

export const fineness = (
  <FinenessPage
    values={{ density: "13,4", uDensity: "0,05", metal: "gold", colour: "any" }}
    colours={[{ value: "any", label: "any: silver, copper and up to a fifth of zinc" }]}
    problems={[]}
    answer={{
      message: "Between 475 and 620 ‰.",
      plot: {
        interval: [475, 620],
        recipes: [
          { name: "all silver", low: 475, high: 492 },
          { name: "all copper", low: 604, high: 620 },
        ],
        standards: [
          { fineness: 500, name: "500" },
          { fineness: 585, name: "585", claimed: true },
        ],
      },
      facts: [
        ["Measurement", "16 ‰"],
        ["Freedom of the rest", "130 ‰"],
      ],
    }}
  />
);

export const firstStartGerman = (
  <FirstStart
    csrfToken={csrfToken}
    locale="de"
    metals={[
      { id: "silver", name: "Silber" },
      { id: "gold", name: "Gold" },
    ]}
  />
);
