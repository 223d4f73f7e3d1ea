import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { unescapeText } from "../../../drivers/escape.ts";
import { lineText } from "../../../drivers/line.ts";
import { type LearnedSensor, learnSensor, type ReadOff } from "../../../drivers/sensors/learn-sensor.ts";
import { isPluggedSensor } from "../../../drivers/sensors/plugged-sensors.ts";
import { sensedQuantities } from "../../../drivers/sensors/quantity.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import {
  SensorList,
  type SensorRow,
  SensorsPage,
  type SensorsView,
} from "../../../views/settings/sensors.tsx";
import type { HandDevices } from "../../station/hand-devices.ts";
import type { HeardSensor } from "../../station/heard-sensor.ts";
import { sensorPlaces } from "../../station/sensor-choice.ts";
import type { SensorsInUse } from "../../station/sensors-in-use.ts";
import type { Sensed } from "../../weighing/sensor-value.ts";
import { type Entries, type FieldProblem, type Form, formIn, postedForm } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf, wantsPart } from "../page-request.ts";
import { problemsOf, refusalOf } from "../refused.ts";

interface Parts {
  sensors: SensorsInUse;
  hands: HandDevices;
  demo: boolean;
}

interface Shown {
  problems?: readonly FieldProblem[] | SensorsView["problems"];
  typed?: Readonly<Record<string, string>>;
  asks?: { address: string; learned: Extract<LearnedSensor, { asks: unknown }> };
}

/** A new sensor as it is typed: where it is, what hangs on it, and what each quantity is good for. */
const sensorForm = ({ text, exact, choice, maybeDecimal }: Entries) =>
  z.object({
    address: text(),
    line: text(),
    place: choice(sensorPlaces),
    request: exact(),
    "half-temperature": maybeDecimal({ unit: "°C", aboveZero: true, to: 5 }),
    "half-pressure": maybeDecimal({ unit: "hPa", aboveZero: true, to: 50 }),
    "half-humidity": maybeDecimal({ unit: "%", aboveZero: true, to: 50 }),
  });

/** What its owner reads off it, as it is shown there; `at` answers which number of a line the first of them is. */
const setUpForm: Form<{ address: string; shown: ReadOff[] }> = ({ typed }, sent) =>
  z.object({ address: typed(), at: typed() }).transform(({ address, at }) => ({
    address,
    shown: sensedQuantities.flatMap((quantity) => {
      const text = (sent[quantity] ?? "").trim();
      const unit = sent[`${quantity}-unit`] ?? "";
      return text === "" ? [] : [{ text, unit, at: at === "" ? undefined : Number(at) }];
    }),
  }));

const handsForm = ({ typed }: Entries) =>
  z.object({ scanner: typed(), scannerLine: typed(), footSwitch: typed() });
const addressForm = ({ typed }: Entries) => z.object({ address: typed() });

/** The sensors beside the balance: listened to, set up, taken away. */
export function sensorRoutes(app: FastifyInstance, { sensors, hands, demo }: Parts): void {
  const csrf = { preHandler: app.csrfProtection };

  function show(request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const { problems = [], typed = {}, asks } = shown;
    const rows = sensors.all.map((sensor) => rowOf(sensor, asks));
    const view: SensorsView = {
      sensors: rows,
      found: sensors.found(),
      problems,
      typed,
      hands: hands.choice,
      csrfToken: frame.csrfToken,
    };
    if (wantsPart(request)) return html(reply, render(<SensorList {...view} />, frame.locale));
    const title = tellerOf(frame.locale)("sensors.title");
    return html(
      reply,
      page({ ...frame, title, main: <SensorsPage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/settings/sensors", (request, reply) =>
    show(request, reply, { typed: { address: queryOf(request).address ?? "" } }),
  );

  app.post("/settings/sensors", csrf, async (request, reply) => {
    const typed = asTyped(request);
    const read = postedForm(request, sensorForm);
    if ("problems" in read) return show(request, reply, { problems: read.problems, typed });
    try {
      await sensors.keep(choiceOf(read.values));
    } catch (error) {
      return show(request, reply, { problems: problemsOf(error, "address"), typed });
    }
    return reply.redirect("/settings/sensors", 303);
  });

  app.post("/settings/sensors/set-up", csrf, async (request, reply) => {
    const typed = asTyped(request);
    const { address, shown } = formIn(request, setUpForm);
    const sensor = sensors.all.find(({ choice }) => choice.address === address);
    if (!sensor) return show(request, reply);
    const learned = learnSensor(sensor.name, linesOf(sensor), shown);
    if ("refused" in learned)
      return show(request, reply, { problems: [{ fieldId: "set-up", error: learned.refused }], typed });
    if ("asks" in learned)
      return show(request, reply, { typed, asks: { address: sensor.choice.address, learned } });
    await sensors.keep({ ...sensor.choice, profile: learned.profile });
    return reply.redirect("/settings/sensors", 303);
  });

  app.post("/settings/hand-devices", csrf, async (request, reply) => {
    try {
      await hands.keep(formIn(request, handsForm));
    } catch (error) {
      return show(request, reply, { problems: problemsOf(error, "scanner") });
    }
    return reply.redirect("/settings/sensors", 303);
  });

  app.post("/settings/sensors/removal", csrf, async (request, reply) => {
    try {
      await sensors.remove(formIn(request, addressForm).address);
    } catch (error) {
      return show(request, reply, {
        problems: [{ fieldId: "sensors-now", error: refusalOf(error).message }],
      });
    }
    return reply.redirect("/settings/sensors", 303);
  });
}

function choiceOf({ request, ...values }: z.infer<ReturnType<typeof sensorForm>>) {
  const halves = sensedQuantities.map((quantity) => [quantity, values[`half-${quantity}`]] as const);
  return {
    address: values.address,
    line: values.line,
    place: values.place,
    halfWidths: Object.fromEntries(halves.filter(([, half]) => half !== undefined)),
    ...(request.trim() === "" ? {} : { ask: { request, when: "timer", everyMs: 2000, ownerAgreed: true } }),
  };
}

/** The last lines of a sensor as text, without its events. */
function linesOf(sensor: HeardSensor): string[] {
  return sensor
    .recent()
    .filter(({ raw }) => raw !== "")
    .map(({ raw }) => lineText(unescapeText(raw)));
}

function rowOf(sensor: HeardSensor, asks: Shown["asks"]): SensorRow {
  const { choice } = sensor;
  const now = sensor.now();
  const lines = linesOf(sensor);
  const asked = asks?.address === choice.address ? asks.learned : undefined;
  return {
    address: choice.address,
    place: choice.place,
    now: now.values ? now.values.map(shownNow) : now.message,
    lines,
    needsSetUp:
      !isPluggedSensor(choice.address) &&
      choice.profile === undefined &&
      lines.length > 0 &&
      now.values === undefined,
    ...(asked ? { asks: { message: asked.asks, options: asked.options } } : {}),
  };
}

function shownNow({ quantity, text, unit, half_width }: Sensed) {
  return { quantity, text, unit, ...(half_width === undefined ? {} : { halfWidth: half_width }) };
}
