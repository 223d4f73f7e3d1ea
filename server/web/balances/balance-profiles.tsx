import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { checkProfile, exportProfile, importProfile } from "../../../drivers/learning/index.ts";
import { ProfilePage } from "../../../views/balances/profile.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { Problem } from "../../../views/problem.tsx";
import type { KeptProfile } from "../../station/kept-profiles.ts";
import { Refusal } from "../../weighing/refusal.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { fileOf } from "../uploads.ts";
import type { BalanceForm } from "./balance-forms.ts";
import { samplesOf } from "./balance-learning.tsx";
import type { BalanceParts } from "./balance-parts.ts";
import { profileHref } from "./profile-href.ts";

/** Throws Refusal for a file that is no text. */
function textOf(file: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(file);
  } catch {
    throw new Refusal("The file is no text in UTF-8. Right: a file that was exported on the Balances page.");
  }
}

/** The learned profiles: shown in words, tested by their own lines, saved as a file, taken over from one, used. */
export function balanceProfileRoutes(
  app: FastifyInstance,
  { balance, profiles, demo }: BalanceParts,
  form: BalanceForm,
): void {
  function problem(request: FastifyRequest, reply: FastifyReply, says: string, status = 422): FastifyReply {
    const frame = frameOf(request, reply, { path: "/balances/profiles", demo });
    return html(
      reply,
      page({ ...frame, title: tellerOf(frame.locale)("frame.not-done"), main: <Problem says={says} /> }),
      status,
    );
  }
  function asked(request: FastifyRequest): KeptProfile | undefined {
    return profiles.named((request.params as { name: string }).name);
  }
  const unknown = "No profile of that name is kept here. Go back to Balances and choose one of its list.";

  app.get("/balances/profiles/:name", (request, reply) => {
    const kept = asked(request);
    if (!kept) return problem(request, reply, unknown, 404);
    const { name, version, keptAt, profile } = kept;
    const frame = frameOf(request, reply, { path: "/balances/profiles", demo });
    const { passed, failures } = checkProfile(profile);
    const main = (
      <ProfilePage
        name={name}
        version={version}
        keptAt={keptAt.slice(0, 16).replace("T", " ")}
        exportHref={`${profileHref(name)}/export`}
        facts={profile.findings.filter(({ sure }) => sure).map(({ says }) => says)}
        open={profile.findings.filter(({ sure }) => !sure).map(({ says }) => says)}
        samples={samplesOf(profile)}
        test={
          passed
            ? `all ${profile.samples.length} sample lines are read as they were confirmed`
            : `failed: ${failures.join(" ")}`
        }
        inUse={balance.profile?.name === name}
        canBeUsed={balance.choice !== undefined}
        csrfToken={frame.csrfToken}
      />
    );
    return html(reply, page({ ...frame, title: tellerOf(frame.locale)("balances.profile-title"), main }));
  });

  app.get("/balances/profiles/:name/export", (request, reply) => {
    const kept = asked(request);
    if (!kept) return problem(request, reply, unknown, 404);
    const file = kept.name.replace(/[^\p{L}\p{N}]+/gu, "-");
    return reply
      .type("application/json; charset=utf-8")
      .header(
        "content-disposition",
        `attachment; filename*=UTF-8''${encodeURIComponent(`${file}-${kept.version}.json`)}`,
      )
      .send(exportProfile(kept.profile));
  });

  form("/balances/profiles/import", problem, async ({ text = "" }, request) => {
    const file = fileOf(request, "file");
    if (!file && text.trim() === "")
      throw new Refusal(
        "Neither a file was chosen nor a text pasted. Choose the exported file, or paste it.",
      );
    const imported = importProfile(file ? textOf(file) : text);
    if (imported.refused !== undefined) throw new Refusal(imported.refused);
    return profileHref((await profiles.keep(imported.profile)).name);
  });

  form("/balances/profiles/use", problem, async ({ name = "" }) => {
    const { choice } = balance;
    if (!choice) throw new Refusal("No balance on a cable is in use. Choose its port on Balances first.");
    if (name !== "" && !profiles.named(name)) throw new Refusal(unknown);
    const { profile: _before, ...rest } = choice;
    await balance.choose(name === "" ? rest : { ...rest, profile: name });
    return "/balances";
  });
}
