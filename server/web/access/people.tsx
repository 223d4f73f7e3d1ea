import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { z } from "zod";
import { message } from "../../../calibration/message.ts";
import { tellerOf } from "../../../views/messages/tell.ts";
import { page } from "../../../views/page.tsx";
import { PhonePage, type PhoneView } from "../../../views/settings/phone.tsx";
import type { Access } from "../../access/access.ts";
import type { Person } from "../../access/person.ts";
import { covers, roles } from "../../access/role.ts";
import type { Room } from "../../access/room.ts";
import { addedMinutes, firstMinutes } from "../../access/sign-up-codes.ts";
import type { Ledger } from "../../ledger/ledger.ts";
import { addressOf, roomOf } from "../arrival.ts";
import { type Entries, formIn } from "../forms/form.ts";
import { frameOf } from "../look.ts";
import { asTyped, html, queryOf } from "../page-request.ts";
import { personOf } from "../person.ts";
import { problemsOf } from "../refused.ts";

interface Parts {
  /** undefined when this start has no address for the room: then there is nobody to add */
  access: Access | undefined;
  room: (() => Room | undefined) | undefined;
  ledger: Ledger;
  demo: boolean;
}

type Shown = Partial<Pick<PhoneView, "made" | "problems" | "typed">>;

const personForm = ({ typed, choice }: Entries) =>
  z.object({ name: typed(), initials: typed(), role: choice(roles) });
const roleForm = ({ choice }: Entries) => z.object({ role: choice(roles) });

/** "Phone in this room": the address with its fingerprint, the code of the first person, and who may sign in. */
export function peopleRoutes(app: FastifyInstance, { access, room, ledger, demo }: Parts): void {
  const csrf = { preHandler: app.csrfProtection };

  async function show(request: FastifyRequest, reply: FastifyReply, shown: Shown = {}) {
    const frame = frameOf(request, reply, { path: "/settings", demo });
    const { problems = [], typed = {}, made } = shown;
    const here = roomOf(request) === undefined;
    const person = personOf(request);
    const at = room?.();
    const { certificate } = at ?? {};
    const first = access?.codes.first;
    const view: PhoneView = {
      here,
      people: (access?.people.all ?? []).map(viewOf),
      kept: "kept" in queryOf(request),
      typed,
      problems,
      mayChange: access !== undefined && (here || (person !== undefined && covers(person.role, "manage"))),
      csrfToken: frame.csrfToken,
      ...(at
        ? {
            room: {
              urls: at.urls,
              own: certificate?.own === true,
              ...(certificate ? { fingerprint: certificate.fingerprint } : {}),
            },
          }
        : {}),
      ...(access && !access.people.hasSupervisor
        ? { first: { minutes: firstMinutes, ...(here && first ? { code: first.code } : {}) } }
        : {}),
      ...(made ? { made } : {}),
    };
    const title = tellerOf(frame.locale)("phone.title");
    return html(
      reply.header("cache-control", "no-store"),
      page({ ...frame, title, main: <PhonePage {...view} /> }),
      problems.length > 0 ? 422 : 200,
    );
  }

  app.get("/settings/phone", (request, reply) => show(request, reply));
  if (!access) return;

  /** Who did it, for the ledger. */
  const doer = (request: FastifyRequest) => {
    const by = personOf(request)?.initials;
    return { ...(by === undefined ? {} : { by }), ...(roomOf(request) ? { from: addressOf(request) } : {}) };
  };

  app.post("/settings/phone/first-code", csrf, async (request, reply) => {
    if (roomOf(request) === undefined && !access.people.hasSupervisor) access.codes.make({ first: true });
    return reply.redirect("/settings/phone", 303);
  });

  app.post("/settings/phone/people", csrf, async (request, reply) => {
    try {
      const added = access.people.add(formIn(request, personForm));
      await ledger.append("person-added", "access", {
        ...namesOf(added),
        role: added.role,
        ...doer(request),
      });
      return show(request, reply, { made: codeFor(added) });
    } catch (error) {
      return show(request, reply, { problems: problemsIn(error), typed: asTyped(request) });
    }
  });

  /** A form about one person; `does` gives what the page then shows, or nothing. */
  function about(
    what: string,
    does: (person: Person, request: FastifyRequest) => Promise<Pick<PhoneView, "made"> | undefined>,
  ): void {
    app.post<{ Params: { id: string } }>(
      `/settings/phone/people/:id/${what}`,
      csrf,
      async (request, reply) => {
        const person = access?.people.byId(request.params.id);
        const gone = [{ fieldId: "people", error: message("access.person.gone") }];
        if (!person) return show(request, reply, { problems: gone });
        try {
          const shown = await does(person, request);
          return shown ? show(request, reply, shown) : reply.redirect("/settings/phone?kept", 303);
        } catch (error) {
          return show(request, reply, { problems: problemsIn(error) });
        }
      },
    );
  }

  about("role", async (person, request) => {
    const { role } = formIn(request, roleForm);
    access.changeRole(person.id, role);
    const { name: _, ...who } = namesOf(person);
    await ledger.append("person-role-changed", "access", {
      ...who,
      before: person.role,
      role,
      ...doer(request),
    });
    return undefined;
  });
  about("code", async (person, request) => {
    const { name: _, ...who } = namesOf(person);
    await ledger.append("sign-up-code-made", "access", { ...who, ...doer(request) });
    return { made: codeFor(person) };
  });
  about("removal", async (person, request) => {
    access.remove(person.id);
    await ledger.append("person-removed", "access", {
      ...namesOf(person),
      role: person.role,
      ...doer(request),
    });
    return undefined;
  });

  function codeFor({ id, initials }: Person): NonNullable<PhoneView["made"]> {
    const { code } = access!.codes.make({ person: id });
    return { code, initials, minutes: addedMinutes };
  }
}

const namesOf = ({ id, name, initials }: Person) => ({ person: id, name, initials });

const viewOf = ({ id, name, initials, role, passphrase }: Person): PhoneView["people"][number] => ({
  id,
  name,
  initials,
  role,
  ready: passphrase !== null,
});

function problemsIn(error: unknown): PhoneView["problems"] {
  return problemsOf(error, "people");
}
