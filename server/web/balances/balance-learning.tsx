import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { Refusal } from "../../../calibration/refusal.ts";
import { systemClock } from "../../../drivers/clock.ts";
import { answersFrom, mustReadItsSamples } from "../../../drivers/learning/index.ts";
import { LearningNow, Learning as LearningPage, LearningPart } from "../../../views/balances/learning.tsx";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import type { Told } from "../../../views/told.tsx";
import { Learning } from "../../station/learning.ts";
import type { StoredProfile } from "../../station/profile-repository.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { fieldsOf, html } from "../page-request.ts";
import type { BalanceForm, ShowAgain } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { learningView } from "./learning-view.ts";
import { profileHref } from "./profile-href.ts";

/** Setting the balance in use up: step by step over its live bytes, pasted lines, and what was found. */
export function balanceLearningRoutes(app: FastifyInstance, parts: BalanceParts, form: BalanceForm): void {
  const { balance, demo, clock = systemClock } = parts;
  const learning = new Learning(balance, clock, {
    line: () => stream.changed("learning-now"),
    step: () => stream.changed("learning-now", "learning"),
  });
  const view = (csrfToken: string) => learningView(learning, balance, csrfToken);
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["learning-now", (token, locale) => render(<LearningNow {...view(token)} />, locale)],
      ["learning", (token, locale) => render(<LearningPart {...view(token)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  app.addHook("preClose", async () => {
    stream.close();
  });
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Told) => {
    const frame = frameOf(request, reply, { path: "/balances/learning", demo });
    const { text = "", displayed = "", unit = "" } = fieldsOf(request);
    const again = problem === undefined ? {} : { problem };
    const main = (
      <LearningPage {...view(frame.csrfToken)} pastedText={text} typed={{ displayed, unit }} {...again} />
    );
    const title = tellerOf(frame.locale)("balances.learning-title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances/learning", (request, reply) => show(request, reply));
  app.get("/balances/learning/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));
  learningForms(form, show, learning, parts);
}

function learningForms(form: BalanceForm, show: ShowAgain, learning: Learning, parts: BalanceParts): void {
  form("/balances/learning", show, async ({ go = "", displayed = "", unit = "" }) => {
    if (go === "begin") await learning.begin();
    else if (go === "on") learning.goOn({ text: displayed, unit });
    else if (go === "leave-out") learning.leaveOut();
    else if (go === "stop") await learning.stop();
    else throw new Refusal("learn.go", { go });
    return "/balances/learning";
  });
  form("/balances/learning/pasted", show, async ({ text = "" }) => {
    learning.fromText(text);
    return "/balances/learning#learned-heading";
  });
  form("/balances/learning/answers", show, async ({ _csrf, ...answers }) => {
    learning.answer(answersFrom(answers));
    return "/balances/learning#learned-heading";
  });
  form("/balances/profiles", show, async (fields) =>
    profileHref((await keepProfile(learning, parts, fields)).name),
  );
}

/** Keeps what was found under the owner's name for it, and reads the balance by it. Throws Refusal. */
async function keepProfile(
  learning: Learning,
  { balance, profiles }: BalanceParts,
  { name = "", confirmed }: Record<string, string>,
): Promise<StoredProfile> {
  const called = name.trim();
  if (called === "" || called.length > 120) throw new Refusal("learn.name", {}, "name");
  if (confirmed !== "yes") throw new Refusal("learn.not-compared", {}, "confirmed");
  const profile = learning.named(called);
  mustReadItsSamples(profile);
  const kept = await profiles.keep(profile);
  if (balance.choice) await balance.choose({ ...balance.choice, profile: kept.name });
  learning.done();
  return kept;
}
