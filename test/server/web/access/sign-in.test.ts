import { readFileSync, statSync } from "node:fs";
import { request as askTls } from "node:https";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Role } from "../../../../server/access/role.ts";
import { codesIn } from "../../page-fields.ts";
import { type Answer, openTestRoom, passphrase, type TestRoom } from "../../room.ts";

let bench: TestRoom;
let clockMs: number;
beforeEach(async () => {
  clockMs = Date.parse("2026-03-02T08:00:00Z");
  bench = await openTestRoom({}, () => clockMs);
});
afterEach(() => bench?.close());

const minutes = (count: number) => {
  clockMs += count * 60_000;
};
const sessionIn = ({ cookies }: Answer) => cookies.find((one) => one.startsWith("__Host-"));

/** A device that has opened a page of the sign-in, and sends its forms. */
async function device(cookie = "") {
  const page = await bench.ask({ path: "/sign-in/code", headers: { cookie } });
  const token = /name="_csrf" value="([^"]+)"/.exec(page.body)?.[1] ?? "";
  const cookies = [cookie, ...page.cookies].filter((one) => one !== "").join("; ");
  return (path: string, fields: Record<string, string>, headers: Record<string, string> = {}) =>
    bench.ask({
      method: "POST",
      path,
      headers: { cookie: cookies, origin: `https://${bench.host}`, ...headers },
      fields: { _csrf: token, ...fields },
    });
}

const first = () => ({
  code: bench.access.codes.first?.code ?? "",
  name: "Ada Bell",
  initials: "AB",
  passphrase,
});

async function entries() {
  const all = await bench.at.ledger.entries({});
  return all.filter(({ subject }) => subject === "access").map(({ kind, body }) => ({ kind, ...body }));
}

describe("the first person", () => {
  test("comes in with the code that the machine shows, once, and is a supervisor", async () => {
    const shown = await bench.askHere({ path: "/settings/phone" });
    const code = /id="first-code"[^>]*><strong>([0-9A-Z-]+)/.exec(shown.body)?.[1] ?? "";
    expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
    const post = await device();
    // typed small, without its dash
    const answer = await post("/sign-in/code", { ...first(), code: code.toLowerCase().replace("-", "") });
    expect([answer.status, answer.headers.location]).toEqual([303, "/"]);
    const set = (answer.headers["set-cookie"] ?? []).find((one) => one.startsWith("__Host-"));
    for (const attribute of ["Secure", "HttpOnly", "SameSite=Strict", "Path=/"])
      expect(set).toContain(attribute);
    expect(set).not.toContain("Domain");
    const cookie = sessionIn(answer)!;
    expect((await bench.ask({ path: "/settings", headers: { cookie } })).status).toBe(200);
    expect(await entries()).toMatchObject([
      { kind: "person-added", initials: "AB", role: "supervisor", from: "127.0.0.1" },
      { kind: "passphrase-chosen", initials: "AB" },
      { kind: "signed-in", initials: "AB", from: "127.0.0.1" },
    ]);
    const again = await (await device())("/sign-in/code", { ...first(), code, initials: "CD" });
    expect(codesIn(again.body)).toEqual(["access.code-wrong", "access.code-wrong"]);
    expect(bench.access.people.all).toHaveLength(1);
    // nobody is first any more, not even at the machine
    const page = await bench.askHere({ path: "/settings/phone" });
    expect(page.body).not.toContain("first-code");
  });

  test("finds no code on any page of the room", async () => {
    for (const path of ["/sign-in", "/sign-in/code", "/settings/phone"])
      expect((await bench.ask({ path })).body).not.toContain(bench.access.codes.first!.code);
  });

  test("is late after ten minutes, and gets another code at the machine", async () => {
    const { code } = first();
    minutes(10);
    const late = await (await device())("/sign-in/code", { ...first(), code });
    expect([late.status, codesIn(late.body)[0]]).toEqual([401, "access.code-wrong"]);
    const here = await bench.askHere({ path: "/settings/phone" });
    const token = /name="_csrf" value="([^"]+)"/.exec(here.body)?.[1] ?? "";
    await bench.askHere({
      method: "POST",
      path: "/settings/phone/first-code",
      headers: { cookie: here.cookies.join("; ") },
      fields: { _csrf: token },
    });
    expect(bench.access.codes.first?.code).not.toBe(code);
    expect((await (await device())("/sign-in/code", first())).status).toBe(303);
  });

  test("keeps the code while the passphrase is refused", async () => {
    const post = await device();
    for (const [typed, refused] of [
      // NIST SP 800-63B-4, section 3.1.1.2 (from memory): at least 15 characters where nothing else is asked for
      ["fourteen chars", "access.passphrase.short"],
      ["x".repeat(201), "access.passphrase.long"],
      ["aaaaaaaaaaaaaaaaaa", "access.passphrase.guessable"],
      ["123456789012345678", "access.passphrase.guessable"],
      ["Ada Bell underhook", "access.passphrase.guessable"],
    ] as const) {
      const answer = await post("/sign-in/code", { ...first(), passphrase: typed });
      expect([typed, answer.status, codesIn(answer.body)[0]]).toEqual([typed, 422, refused]);
      expect(answer.body).not.toContain(`value="${typed}"`);
    }
    expect((await post("/sign-in/code", first())).status).toBe(303);
  });

  test("is one, when two devices send the code at once", async () => {
    const [one, other] = await Promise.all([device(), device()]);
    const { code } = first();
    const answers = await Promise.all([
      one("/sign-in/code", { ...first(), code }),
      other("/sign-in/code", { ...first(), code, initials: "CD" }),
    ]);
    expect(answers.map(({ status }) => status).sort()).toEqual([303, 401]);
    expect(bench.access.people.all).toHaveLength(1);
  });
});

describe("signing in", () => {
  beforeEach(() => bench.signedIn("AB", "operator"));
  const right = { initials: "ab", passphrase };

  test("takes initials in either case, and gives a new session each time", async () => {
    const post = await device();
    const [one, other] = [await post("/sign-in", right), await post("/sign-in", right)];
    expect(one.status).toBe(303);
    expect(sessionIn(one)).not.toBe(sessionIn(other));
  });

  test("never goes on with an id that the device brought", async () => {
    const planted = `__Host-underhook-session=${"p".repeat(43)}`;
    const answer = await (await device(planted))("/sign-in", right);
    expect(sessionIn(answer)).not.toBe(planted);
    const asked = await bench.ask({ path: "/records", headers: { cookie: planted } });
    expect(asked.headers.location).toBe("/sign-in");
  });

  test("ends the session that the device had before", async () => {
    const before = sessionIn(await (await device())("/sign-in", right))!;
    await (await device(before))("/sign-in", right);
    expect((await bench.ask({ path: "/records", headers: { cookie: before } })).status).toBe(303);
  });

  test("is answered alike for a wrong passphrase and for initials that nobody has", async () => {
    bench.access.people.add({ name: "Invited", initials: "IN", role: "operator" });
    const post = await device();
    const wrong = await post("/sign-in", { initials: "AB", passphrase: "another passphrase" });
    const unknown = await post("/sign-in", { initials: "ZZ", passphrase: "another passphrase" });
    const noPassphrase = await post("/sign-in", { initials: "IN", passphrase: "" });
    const plain = ({ status, body }: Answer) => [
      status,
      body.replaceAll(/name="_csrf" value="[^"]+"/g, "").replaceAll(/value="(AB|ZZ|IN)"/g, ""),
    ];
    expect(codesIn(wrong.body)[0]).toBe("access.wrong");
    expect(plain(unknown)).toEqual(plain(wrong));
    expect(plain(noPassphrase)).toEqual(plain(wrong));
    const told = (await entries()).filter(({ kind }) => kind === "sign-in-refused");
    expect(told).toMatchObject([
      { reason: "wrong", initials: "AB" },
      { reason: "wrong" },
      { initials: "IN" },
    ]);
    // what was typed for an unknown person may be a passphrase, and is written nowhere
    expect(JSON.stringify(await bench.at.ledger.entries({}))).not.toMatch(/"ZZ"|another passphrase/);
  });

  test.each(["AB", "ZZ"])("waits after five failed tries, then twice as long: %s", async (initials) => {
    const post = await device();
    const wrong = { initials, passphrase: "another passphrase" };
    for (let tries = 0; tries < 5; tries += 1) expect((await post("/sign-in", wrong)).status).toBe(401);
    // the right one is not looked at either
    const kept = await post("/sign-in", { initials, passphrase });
    expect([kept.status, codesIn(kept.body)[0]]).toEqual([429, "access.wait"]);
    clockMs += 30_000;
    expect((await post("/sign-in", wrong)).status).toBe(401);
    clockMs += 59_000;
    expect((await post("/sign-in", wrong)).status).toBe(429);
    expect((await entries()).map((one) => "reason" in one && one.reason)).toEqual([
      ...Array(5).fill("wrong"),
      "wait",
      "wrong",
      "wait",
    ]);
  });

  test("takes ten forms of an address in a minute", async () => {
    const post = await device();
    const statuses: number[] = [];
    for (let tries = 0; tries < 12; tries += 1)
      statuses.push((await post("/sign-in", { initials: `N${tries}`, passphrase: "x" })).status);
    expect(statuses.filter((status) => status === 401).length).toBeLessThanOrEqual(10);
    expect(statuses.slice(10)).toEqual([429, 429]);
  });

  test("needs the token of its own form", async () => {
    const post = await device();
    const answer = await post("/sign-in", { ...right, _csrf: "" });
    expect([answer.status, codesIn(answer.body)]).toEqual([403, ["refusal.form-too-old"]]);
    expect(sessionIn(answer)).toBeUndefined();
  });
});

describe("a session", () => {
  test("is not found by a guessed id, an empty one, or one of another kind", async () => {
    await bench.signedIn("AB", "supervisor");
    for (const value of ["", "a".repeat(43), "../people", "%00", "[object Object]"]) {
      const cookie = `__Host-underhook-session=${value}`;
      const answer = await bench.ask({ path: "/records", headers: { cookie } });
      expect([value, answer.status, answer.headers.location]).toEqual([value, 303, "/sign-in"]);
    }
  });

  test("is good for nothing after its person has signed out", async () => {
    const { get, post } = await bench.signedIn("AB", "operator");
    expect((await get("/records")).status).toBe(200);
    expect((await post("/sign-out")).headers.location).toBe("/sign-in");
    expect((await get("/records")).headers.location).toBe("/sign-in");
    expect((await post("/bench/piece")).status).toBe(401);
    expect(await entries()).toMatchObject([{ kind: "signed-out", initials: "AB" }]);
  });

  test("ends after an hour without a request, and after twelve hours in any case", async () => {
    const { get } = await bench.signedIn("AB", "operator");
    minutes(59);
    expect((await get("/records")).status).toBe(200);
    minutes(59);
    // a page that only listens does not count
    expect((await get("/bench/live")).status).toBe(200);
    minutes(2);
    expect((await get("/records")).status).toBe(303);
    const other = await bench.signedIn("AB", "operator");
    for (let hours = 0; hours < 12; hours += 1) {
      expect((await other.get("/records")).status).toBe(200);
      minutes(59.9);
    }
    minutes(2);
    expect((await other.get("/records")).status).toBe(303);
  });

  test.each([
    ["signing out", async () => undefined],
    ["being removed", async () => bench.access.remove(bench.access.people.byInitials("AB")!.id)],
    [
      "another role",
      async () => bench.access.changeRole(bench.access.people.byInitials("AB")!.id, "auditor"),
    ],
    [
      "its time being over",
      async () => {
        minutes(13 * 60);
        bench.access.sessions.sweep();
      },
    ],
  ])("cuts its live streams at the end: %s", async (_, end) => {
    await bench.signedIn("CD", "supervisor");
    const { cookie, post } = await bench.signedIn("AB", "operator");
    const closed = ["/bench/live", "/customer/live", "/balances/live"].map(
      (path) =>
        new Promise<void>((resolve, reject) => {
          const [host, port] = bench.host.split(":");
          const asked = askTls(
            { host, port, path, rejectUnauthorized: false, headers: { host: bench.host, cookie } },
            (response) => {
              response.once("data", () => opened());
              response.on("close", resolve);
              response.on("error", () => undefined);
            },
          );
          asked.on("error", reject).end();
        }),
    );
    let heard = 0;
    let allHeard: () => void;
    const all = new Promise<void>((resolve) => {
      allHeard = resolve;
    });
    function opened() {
      heard += 1;
      if (heard === closed.length) allHeard();
    }
    await all;
    await end();
    if (_ === "signing out") await post("/sign-out");
    await Promise.all(closed);
  });
});

describe("people", () => {
  const people = () => bench.access.people.all.map(({ initials, role }) => [initials, role]);

  test("are added by a supervisor, choose their own passphrase with a code, and are removed", async () => {
    const chief = await bench.signedIn("AB", "supervisor");
    const page = await chief.post("/settings/phone/people", {
      name: "Cleo Dahl",
      initials: "CD",
      role: "operator",
    });
    const code = /id="made-code"[^>]*><strong>([0-9A-Z-]+)/.exec(page.body)?.[1] ?? "";
    const post = await device();
    expect((await post("/sign-in/code", { code, initials: "AB", passphrase })).status).toBe(401);
    const chosen = await post("/sign-in/code", { code, initials: "cd", passphrase });
    expect(chosen.status).toBe(303);
    const cookie = sessionIn(chosen)!;
    expect((await bench.ask({ path: "/settings", headers: { cookie } })).status).toBe(403);
    const { id } = bench.access.people.byInitials("CD")!;
    await chief.post(`/settings/phone/people/${id}/role`, { role: "auditor" });
    expect((await bench.ask({ path: "/records", headers: { cookie } })).status).toBe(303);
    await chief.post(`/settings/phone/people/${id}/removal`);
    expect(people()).toEqual([["AB", "supervisor"]]);
    expect((await post("/sign-in", { initials: "CD", passphrase })).status).toBe(401);
    expect((await entries()).filter(({ kind }) => kind.startsWith("person-"))).toMatchObject([
      { kind: "person-added", initials: "CD", role: "operator", by: "AB", from: "127.0.0.1" },
      { kind: "person-role-changed", before: "operator", role: "auditor", by: "AB" },
      { kind: "person-removed", initials: "CD", role: "auditor", by: "AB" },
    ]);
  });

  test("the last supervisor stays one", async () => {
    const chief = await bench.signedIn("AB", "supervisor");
    await bench.signedIn("CD", "operator");
    const { id } = bench.access.people.byInitials("AB")!;
    for (const [what, fields] of [
      ["role", { role: "operator" }],
      ["removal", {}],
    ] as const) {
      const answer = await chief.post(`/settings/phone/people/${id}/${what}`, fields);
      expect([answer.status, codesIn(answer.body)[0]]).toEqual([422, "access.person.last-supervisor"]);
    }
    expect(people()).toContainEqual(["AB", "supervisor"]);
  });

  test("two never have the same initials, whatever their case", async () => {
    const chief = await bench.signedIn("AB", "supervisor");
    const answer = await chief.post("/settings/phone/people", {
      name: "Abe",
      initials: "aB",
      role: "auditor",
    });
    expect(codesIn(answer.body)[0]).toBe("access.person.taken");
  });

  test.each(["operator", "auditor", "customer-display"] as Role[])("%s cannot add any", async (role) => {
    const { post } = await bench.signedIn("CD", role);
    const answer = await post("/settings/phone/people", { name: "E", initials: "EF", role: "supervisor" });
    expect([answer.status, codesIn(answer.body)[0]]).toEqual([403, "access.not-your-role"]);
  });

  test("are kept where only the owner reads, without a passphrase anywhere", async () => {
    await (await device())("/sign-in/code", first());
    const file = join(bench.folder, "people.json");
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const kept = readFileSync(file, "utf8");
    // OWASP Password Storage Cheat Sheet (from memory): argon2id, at least 19 MiB, 2 passes, 1 lane
    expect(kept).toMatch(/\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect(kept).not.toContain(passphrase);
    const ledger = JSON.stringify(await bench.at.ledger.entries({}));
    expect(ledger).not.toMatch(/argon2|spoons/);
  });
});

describe("what the room is sent", () => {
  test("is kept by no cache, its cookies go over TLS alone, and no own certificate is pinned", async () => {
    const { get } = await bench.signedIn("AB", "operator");
    const { headers } = await get("/records");
    expect(headers["cache-control"]).toBe("no-store");
    expect(headers["strict-transport-security"]).toBeUndefined();
    const page = await bench.ask({ path: "/sign-in/code" });
    for (const cookie of page.headers["set-cookie"] ?? []) expect(cookie).toMatch(/; Secure/i);
  });
});
