import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { Refusal } from "../../../calibration/refusal.ts";
import type { Profile } from "../../../drivers/learning/profile.ts";
import { checkProfile, exportProfile, importProfile } from "../../../drivers/learning/samples.ts";
import { ProfilePage, type ProfileView } from "../../../views/balances/profile.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { Sentence } from "../../../views/sentence.tsx";
import type { BalanceInUse } from "../../station/balance-in-use.ts";
import type { StoredProfile } from "../../station/profile-repository.ts";
import type { Entries } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { fileOf } from "../uploads.ts";
import { whenOf } from "../when.ts";
import type { AddForm } from "./balance-forms.ts";
import type { BalanceParts } from "./balance-parts.ts";
import { findingsOf, samplesOf } from "./learning-view.ts";
import { profileHref } from "./profile-href.ts";

interface NamedRequest {
  Params: { name: string };
}

const importForm = ({ exact }: Entries) => z.object({ text: exact() });
const useForm = ({ typed }: Entries) => z.object({ name: typed() });

/** The learned profiles: shown, tested by their own lines, saved as a file, taken over from one, used. */
export function balanceProfileRoutes(app: FastifyInstance, parts: BalanceParts, add: AddForm): void {
  const { balance, profiles, demo } = parts;
  const problem = (request: FastifyRequest, reply: FastifyReply, sentence: Sentence, status = 422) => {
    const frame = frameOf(request, reply, { path: "/balances/profiles", demo });
    const title = tellerOf(frame.locale)("frame.not-done");
    return html(reply, page({ ...frame, title, main: <Problem message={sentence} /> }), status);
  };
  const unknown = message("profile.unknown");
  app.get<NamedRequest>("/balances/profiles/:name", (request, reply) => {
    const kept = profiles.named(request.params.name);
    if (!kept) return problem(request, reply, unknown, 404);
    const frame = frameOf(request, reply, { path: "/balances/profiles", demo });
    const main = <ProfilePage {...profileView(kept, balance, frame.zone)} csrfToken={frame.csrfToken} />;
    return html(reply, page({ ...frame, title: tellerOf(frame.locale)("balances.profile-title"), main }));
  });
  app.get<NamedRequest>("/balances/profiles/:name/export", (request, reply) => {
    const kept = profiles.named(request.params.name);
    if (!kept) return problem(request, reply, unknown, 404);
    return sendFile(reply, kept);
  });
  add("/balances/profiles/import", problem, importForm, async ({ text }, request) => {
    const profile = importedFrom(text, fileOf(request, "file"));
    return profileHref((await profiles.keep(profile)).name);
  });
  add("/balances/profiles/use", problem, useForm, async ({ name }) => {
    const { choice } = balance;
    if (!choice) throw new Refusal("balance.none-in-use");
    if (name !== "" && !profiles.named(name)) throw new Refusal("profile.unknown");
    const { profile: _before, ...rest } = choice;
    await balance.choose(name === "" ? rest : { ...rest, profile: name });
  });
}

function profileView(
  kept: StoredProfile,
  balance: BalanceInUse,
  zone: string,
): Omit<ProfileView, "csrfToken"> {
  const { name, version, keptAt, profile } = kept;
  const [failure] = checkProfile(profile).failures;
  return {
    name,
    version,
    keptAt: whenOf(keptAt, zone),
    exportHref: `${profileHref(name)}/export`,
    ...findingsOf(profile.findings),
    samples: samplesOf(profile),
    test: failure
      ? message("profile.test.failed", { failure })
      : message("profile.test.passed", { lines: profile.samples.length }),
    inUse: balance.profile?.name === name,
    canBeUsed: balance.choice !== undefined,
  };
}

function sendFile(reply: FastifyReply, { name, version, profile }: StoredProfile): FastifyReply {
  const file = `${name.replace(/[^\p{L}\p{N}]+/gu, "-")}-${version}.json`;
  return reply
    .type("application/json; charset=utf-8")
    .header("content-disposition", `attachment; filename*=UTF-8''${encodeURIComponent(file)}`)
    .send(exportProfile(profile));
}

/** The profile of a chosen file, or of pasted text. Throws Refusal. */
function importedFrom(text: string, file: Uint8Array | undefined): Profile {
  if (!file && text.trim() === "") throw new Refusal("profile.no-file");
  return importProfile(file ? textOf(file) : text);
}

/** Throws Refusal for a file that is no text. */
function textOf(file: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(file);
  } catch {
    throw new Refusal("profile.not-text");
  }
}
