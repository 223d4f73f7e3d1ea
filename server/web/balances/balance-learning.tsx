import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { systemClock } from "../../../drivers/clock.ts";
import { type Answers, checkProfile, tellNow } from "../../../drivers/learning/index.ts";
import {
  LearningNow,
  Learning as LearningPage,
  LearningPart,
  type LearningView,
} from "../../../views/balances/learning.tsx";
import { heartbeatSeconds } from "../../../views/bench/index.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page, render } from "../../../views/page.tsx";
import { Learning } from "../../station/learning.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { type Draw, LiveStream } from "../live-stream.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import type { BalanceForm } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { profileHref } from "./profile-href.ts";

/** Learning the balance in use: the guided half minute over its live bytes, pasted lines, and what was learned. */
export function balanceLearningRoutes(
  app: FastifyInstance,
  { balance, profiles, demo, clock = systemClock }: BalanceParts,
  form: BalanceForm,
): void {
  const learning = new Learning(balance, clock, () => stream.changed("learning-now", "learning"));
  const view = (csrfToken: string): LearningView => ({
    balance: balance.scale ? `The ${balance.scale.name}` : "No balance on a cable",
    canListen: balance.choice !== undefined,
    ...runningOf(learning),
    ...learnedOf(learning),
    csrfToken,
  });
  const stream = new LiveStream(
    new Map<string, Draw>([
      ["learning-now", (token, locale) => render(<LearningNow {...view(token)} />, locale)],
      ["learning", (token, locale) => render(<LearningPart {...view(token)} />, locale)],
    ]),
    heartbeatSeconds * 1000,
  );
  app.addHook("preClose", async () => {
    learning.close();
    stream.close();
  });

  function show(request: FastifyRequest, reply: FastifyReply, problem?: string): FastifyReply {
    const frame = frameOf(request, reply, { path: "/balances/learning", demo });
    const { text } = (request.body ?? {}) as { text?: string };
    const main = (
      <LearningPage
        {...view(frame.csrfToken)}
        {...(text === undefined ? {} : { pastedText: text })}
        {...(problem === undefined ? {} : { problem })}
      />
    );
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("balances.learning-title"), main }),
      problem === undefined ? 200 : 422,
    );
  }

  app.get("/balances/learning", (request, reply) => show(request, reply));
  app.get("/balances/learning/live", (request, reply) => stream.join(request, reply, reply.generateCsrf()));

  form("/balances/learning", show, async ({ go }) => {
    if (go === "begin") await learning.begin();
    else if (go === "skip") learning.skip();
    else if (go === "stop") await learning.stop();
    else throw new Refusal(`"${go}" is no step of learning. Reload the page and use its buttons.`);
    return "/balances/learning";
  });
  form("/balances/learning/pasted", show, async ({ text = "" }) => {
    learning.fromText(text);
    return "/balances/learning#learned-heading";
  });
  form("/balances/learning/answers", show, async ({ _csrf, ...answers }) => {
    learning.answer(answers as Answers);
    return "/balances/learning#learned-heading";
  });
  form("/balances/profiles", show, async ({ name = "", confirmed }) => {
    const called = name.trim();
    if (called === "" || called.length > 120)
      throw new Refusal(
        "The profile has no name of 1 to 120 characters. Give it the name you call the balance by.",
      );
    if (confirmed !== "yes")
      throw new Refusal(
        "The profile was not kept: compare the numbers of its sample lines with the display, then tick that they are the same.",
      );
    const profile = learning.named(called);
    const { passed, failures } = checkProfile(profile);
    if (!passed)
      throw new Refusal(`The profile does not read its own sample lines: ${failures[0]} Learn again.`);
    const kept = await profiles.keep(profile);
    if (balance.choice) await balance.choose({ ...balance.choice, profile: kept.name });
    learning.done();
    return profileHref(kept.name);
  });
}

function runningOf({ session, nowMs, chunksHeard }: Learning): Pick<LearningView, "running"> {
  if (!session) return {};
  const { says, step, of, secondsLeft, canSkip } = tellNow(session, nowMs);
  return { running: { says, step, of, secondsLeft, canSkip, heard: chunksHeard } };
}

function learnedOf({ learned }: Learning): Pick<LearningView, "learned"> {
  if (!learned) return {};
  const { profile, findings, says, questions } = learned;
  const sayings = new Set(findings.map((finding) => finding.says));
  return {
    learned: {
      facts: findings.filter(({ sure }) => sure).map((finding) => finding.says),
      // Why nothing was learned is said, although it is no finding.
      open: [
        ...findings.filter(({ sure }) => !sure).map((finding) => finding.says),
        ...says.filter((one) => !sayings.has(one)),
      ],
      questions,
      samples: samplesOf(profile),
      canBeKept: profile !== null,
    },
  };
}

/** The sample lines with what the profile reads in each. */
export function samplesOf(profile: NonNullable<Learning["learned"]>["profile"]) {
  return (profile?.samples ?? []).map(({ raw, reading, event }) => ({
    at: reading ? `${reading.text} ${reading.unit}, ${reading.steady}` : (event ?? "passed over"),
    raw,
  }));
}
