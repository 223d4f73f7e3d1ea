import rateLimit, { normalizeIP } from "@fastify/rate-limit";
import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { SignInPage, SignUpPage, type SignUpView } from "../../../views/access/sign-in.tsx";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import type { Access } from "../../access/access.ts";
import { leastLength } from "../../access/passphrase.ts";
import type { Person } from "../../access/person.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { addressOf, roomOf } from "../arrival.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { html } from "../page-request.ts";
import { personOf } from "../person.ts";
import { problemsOf } from "../refused.ts";
import { sessionCookie } from "./signed-in.ts";

interface Parts {
  access: Access;
  ledger: Ledger;
  demo: boolean;
}

type Problems = SignUpView["problems"];

/** Forms of one address in a minute, and of all together: each costs a slow hash. */
const mostPerAddress = 10;
const mostInAll = 30;

/** What a try is counted by: the address, of IPv6 the network that one household has. */
const keyOf = (request: FastifyRequest): string => normalizeIP(addressOf(request), 64);

/** A passphrase is every sign that was typed. */
const signInForm = ({ typed, exact }: Entries) => z.object({ initials: typed(), passphrase: exact() });
const signUpForm = ({ typed, exact }: Entries) =>
  z.object({ code: typed(), name: typed(), initials: typed(), passphrase: exact() });

/** Signing in and out at the address for the room; at the machine itself nobody signs in. */
export async function signInRoutes(app: FastifyInstance, { access, ledger, demo }: Parts): Promise<void> {
  await app.register(rateLimit, {
    global: false,
    timeWindow: 60_000,
    max: mostPerAddress,
    keyGenerator: keyOf,
    errorResponseBuilder: () => Object.assign(new Error("too many forms"), { statusCode: 429 }),
  });
  const inAll = app.rateLimit({ max: mostInAll, keyGenerator: () => "all", groupId: "all" });
  const form = {
    config: { rateLimit: {} },
    preHandler: [inAll, app.csrfProtection],
  };
  app.addHook("onRequest", async (request, reply) => {
    if (!roomOf(request)) return reply.redirect("/", 303);
  });

  function signIn(request: FastifyRequest, reply: FastifyReply, problems: Problems = [], status = 200) {
    const frame = frameOf(request, reply, { path: "/sign-in", demo });
    const t = tellerOf(frame.locale);
    const person = personOf(request);
    const { initials } = formIn(request, signInForm);
    const main = (
      <SignInPage
        {...(person ? { person: { ...person, role: t(`access.role.${person.role}`) } } : {})}
        first={!access.people.hasSupervisor}
        initials={initials}
        problems={problems}
        csrfToken={frame.csrfToken}
      />
    );
    return html(reply, page({ ...frame, title: t("sign-in.title"), kind: "plain", main }), status);
  }

  function signUp(request: FastifyRequest, reply: FastifyReply, problems: Problems = [], status = 200) {
    const frame = frameOf(request, reply, { path: "/sign-in", demo });
    const { passphrase, ...typed } = formIn(request, signUpForm);
    const main = (
      <SignUpPage
        first={!access.people.hasSupervisor}
        typed={typed}
        least={leastLength}
        problems={problems}
        csrfToken={frame.csrfToken}
      />
    );
    const title = tellerOf(frame.locale)("sign-up.title");
    return html(reply, page({ ...frame, title, kind: "plain", main }), status);
  }

  /** A session begins once the ledger says so; one that this device had before ends. */
  async function begin(request: FastifyRequest, reply: FastifyReply, person: Person) {
    const { id, initials } = person;
    await ledger.append("signed-in", "access", { person: id, initials, from: addressOf(request) });
    access.sessions.end(request.cookies[sessionCookie] ?? "");
    reply.setCookie(sessionCookie, access.sessions.begin(person), {
      path: "/",
      secure: true,
      httpOnly: true,
      sameSite: "strict",
    });
    return reply.redirect(person.role === "customer-display" ? "/customer" : "/", 303);
  }

  app.get("/sign-in", async (request, reply) =>
    access.people.hasSupervisor || personOf(request)
      ? signIn(request, reply)
      : reply.redirect("/sign-in/code", 303),
  );
  app.get("/sign-in/code", async (request, reply) => signUp(request, reply));

  app.post("/sign-in", form, async (request, reply) => {
    const { initials, passphrase } = formIn(request, signInForm);
    const tried = await access.signIn(initials.slice(0, 40), passphrase.slice(0, 1000), keyOf(request));
    if ("done" in tried) return begin(request, reply, tried.done);
    const known = tried.person ? { person: tried.person.id, initials: tried.person.initials } : {};
    const from = addressOf(request);
    await ledger.append("sign-in-refused", "access", { reason: tried.refused, ...known, from });
    const error =
      tried.refused === "wait" ? message("access.wait", { seconds: tried.seconds }) : message("access.wrong");
    return signIn(request, reply, [{ fieldId: "initials", error }], tried.refused === "wait" ? 429 : 401);
  });

  app.post("/sign-in/code", form, async (request, reply) => {
    const from = addressOf(request);
    try {
      const tried = await access.signUp(formIn(request, signUpForm), keyOf(request));
      if ("refused" in tried) {
        await ledger.append("sign-in-refused", "access", { reason: tried.refused, from });
        const error =
          tried.refused === "wait"
            ? message("access.wait", { seconds: tried.seconds })
            : message("access.code-wrong");
        return signUp(request, reply, [{ fieldId: "code", error }], tried.refused === "wait" ? 429 : 401);
      }
      const { person, added } = tried;
      const who = { person: person.id, initials: person.initials, from };
      if (added)
        await ledger.append("person-added", "access", { ...who, name: person.name, role: person.role });
      await ledger.append("passphrase-chosen", "access", who);
      return await begin(request, reply, person);
    } catch (error) {
      return signUp(request, reply, problemsOf(error, "code"), 422);
    }
  });

  app.post("/sign-out", { preHandler: app.csrfProtection }, async (request, reply) => {
    const person = personOf(request);
    access.sessions.end(request.cookies[sessionCookie] ?? "");
    if (person)
      await ledger.append("signed-out", "access", {
        person: person.id,
        initials: person.initials,
        from: addressOf(request),
      });
    return reply
      .clearCookie(sessionCookie, { path: "/", secure: true, httpOnly: true, sameSite: "strict" })
      .redirect("/sign-in", 303);
  });
}
