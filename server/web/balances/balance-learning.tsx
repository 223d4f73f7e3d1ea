import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { systemClock } from "../../../drivers/clock.ts";
import { type Answers, answersFrom } from "../../../drivers/learning/questions.ts";
import { mustReadItsSamples } from "../../../drivers/learning/samples.ts";
import {
  LearningLines,
  LearningNow,
  Learning as LearningPage,
  LearningPart,
} from "../../../views/balances/learning.tsx";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import { Learning } from "../../station/learning.ts";
import type { StoredProfile } from "../../station/profile-repository.ts";
import { type Entries, type Form, formIn } from "../forms/form.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import type { AddForm, ShowAgain } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { learningView } from "./learning-view.ts";
import { profileHref } from "./profile-href.ts";

/** Setting the balance in use up: step by step over its live bytes, pasted lines, and what was found. */
export function balanceLearningRoutes(app: FastifyInstance, parts: BalanceParts, add: AddForm): void {
  const { balance, demo, clock = systemClock } = parts;
  const learning = new Learning(balance, clock, {
    line: () => stream.changed("learning-now", "learning-lines"),
    step: () => stream.changed("learning-now", "learning", "learning-lines"),
  });
  const view = (csrfToken: string) => learningView(learning, balance, csrfToken);
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["learning-now", (token, locale) => render(<LearningNow {...view(token)} />, locale)],
      ["learning-lines", (token, locale) => render(<LearningLines {...view(token)} />, locale)],
      ["learning", (token, locale) => render(<LearningPart {...view(token)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  app.addHook("preClose", async () => {
    stream.close();
  });
  const show = (request: FastifyRequest, reply: FastifyReply, problem?: Sentence) => {
    const frame = frameOf(request, reply, { path: "/balances/learning", demo });
    const { text, displayed, unit } = formIn(request, typedForm);
    const again = problem === undefined ? {} : { problem };
    const main = (
      <LearningPage {...view(frame.csrfToken)} pastedText={text} typed={{ displayed, unit }} {...again} />
    );
    const title = tellerOf(frame.locale)("balances.learning-title");
    return html(reply, page({ ...frame, title, main }), problem === undefined ? 200 : 422);
  };
  app.get("/balances/learning", (request, reply) => show(request, reply));
  app.get("/balances/learning/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));
  learningForms(add, show, learning, parts);
}

const typedForm = ({ exact, typed }: Entries) =>
  z.object({ text: exact(), displayed: exact(), unit: typed() });
const stepForm = ({ exact, typed, choice }: Entries) =>
  z.object({
    go: choice(["begin", "on", "leave-out", "stop"], { wrong: (go) => message("learn.go", { go }) }),
    displayed: exact(),
    unit: typed(),
  });
const pastedForm = ({ exact }: Entries) => z.object({ text: exact() });
const answersForm: Form<Answers> = (_, sent) => z.object({}).transform(() => answersFrom(sent));
const profileForm = ({ text, box }: Entries) =>
  z.object({
    name: text({ most: 120, missing: message("learn.name") }),
    confirmed: box().refine((compared) => compared, { params: { message: message("learn.not-compared") } }),
  });

function learningForms(add: AddForm, show: ShowAgain, learning: Learning, parts: BalanceParts): void {
  add("/balances/learning", show, stepForm, async ({ go, displayed: text, unit }) => {
    if (go === "begin") await learning.begin();
    else if (go === "on") learning.goOn({ text, unit });
    else if (go === "leave-out") learning.leaveOut();
    else await learning.stop();
    return "/balances/learning";
  });
  add("/balances/learning/pasted", show, pastedForm, ({ text }) => {
    learning.fromText(text);
    return "/balances/learning#learned-heading";
  });
  add("/balances/learning/answers", show, answersForm, (answers) => {
    learning.answer(answers);
    return "/balances/learning#learned-heading";
  });
  add("/balances/profiles", show, profileForm, async ({ name }) =>
    profileHref((await keepProfile(learning, parts, name)).name),
  );
}

/** Keeps what was found under the owner's name for it, and reads the balance by it. Throws Refusal. */
async function keepProfile(
  learning: Learning,
  { balance, profiles }: BalanceParts,
  name: string,
): Promise<StoredProfile> {
  const profile = learning.named(name);
  mustReadItsSamples(profile);
  const kept = await profiles.keep(profile);
  if (balance.choice) await balance.choose({ ...balance.choice, profile: kept.name });
  learning.done();
  return kept;
}
