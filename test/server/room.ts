import { mkdtempSync } from "node:fs";
import {
  request as askPlain,
  type ClientRequest,
  createServer,
  type IncomingHttpHeaders,
  type IncomingMessage,
} from "node:http";
import { Agent, request as askTls } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { text } from "node:stream/consumers";
import { Access } from "../../server/access/access.ts";
import { openAccess } from "../../server/access/opened.ts";
import { hashedPassphrase } from "../../server/access/passphrase.ts";
import type { Role } from "../../server/access/role.ts";
import type { Room } from "../../server/access/room.ts";
import type { RoomSettings } from "../../server/access/room-settings.ts";
import { Listener } from "../../server/web/listener.ts";
import { buildTestBench, newLedgerFile, type TestBench } from "./build.ts";

export const passphrase = "four silver spoons in a drawer";

/** Hashed once: how it is hashed is seen where people choose their own. */
const hashed = hashedPassphrase(passphrase);

export interface Answer {
  status: number;
  headers: IncomingHttpHeaders;
  body: string;
  /** cookies that were set, as they are sent back */
  cookies: string[];
}

export interface Ask {
  method?: string;
  path: string;
  headers?: Record<string, string>;
  fields?: Record<string, string>;
}

/** A bench with its two addresses on real sockets: http for the machine itself, TLS (or plain, for a proxy) for the room. */
export interface TestRoom {
  at: TestBench;
  access: Access;
  room: Room;
  /** the authority of the room that tests use, such as 127.0.0.1:40001 */
  host: string;
  herePort: number;
  folder: string;
  ask(asked: Ask): Promise<Answer>;
  /** at the machine's own address */
  askHere(asked: Ask): Promise<Answer>;
  /** a person with a passphrase, and the cookies of its session, with the token of its forms */
  signedIn(initials: string, role: Role): Promise<Visitor>;
  close(): Promise<void>;
}

export interface Visitor {
  cookie: string;
  session: string;
  token: string;
  get(path: string, headers?: Record<string, string>): Promise<Answer>;
  post(path: string, fields?: Record<string, string>, headers?: Record<string, string>): Promise<Answer>;
}

export async function openTestRoom(
  settings: Partial<RoomSettings> = {},
  now: () => number = Date.now,
): Promise<TestRoom> {
  const file = newLedgerFile();
  const folder = mkdtempSync(join(tmpdir(), "underhook-"));
  // first, so that it is not given the port that is found free for the room
  const listener = new Listener((request, response) => at.app.routing(request, response));
  const herePort = await listener.open(0);
  // behind a proxy the address does not tell its port
  const port = await freePort();
  const asked: RoomSettings = { address: "127.0.0.1", port, ...settings };
  const opened = await openAccess(asked, folder);
  const access = now === Date.now ? opened.access : new Access(opened.access.people, now);
  let room: Room | undefined;
  const at = await buildTestBench(file, { entrance: { access, room: () => room } });
  await at.app.ready();
  room = await listener.openRoom(asked, opened.certificate, opened.at);
  const certificate = opened.certificate?.cert;
  const [url = ""] = room.urls;
  const host = new URL(url).host;
  const agent = new Agent({
    keepAlive: true,
    maxFreeSockets: 1,
    ...(certificate ? { ca: certificate } : {}),
  });

  const sent = ({ method = "GET", headers = {}, fields }: Ask, own: Record<string, string>) => ({
    method,
    headers: {
      ...own,
      ...(fields ? { "content-type": "application/x-www-form-urlencoded" } : {}),
      ...headers,
    },
  });
  const payload = ({ fields }: Ask) => (fields ? new URLSearchParams(fields).toString() : "");
  const ask = (one: Ask): Promise<Answer> =>
    answered((heard) =>
      certificate
        ? askTls(
            { host: "127.0.0.1", port, path: one.path, agent, servername: "", ...sent(one, { host }) },
            heard,
          ).end(payload(one))
        : askPlain({ host: "127.0.0.1", port, path: one.path, ...sent(one, { host }) }, heard).end(
            payload(one),
          ),
    );
  const askHere = (one: Ask): Promise<Answer> =>
    answered((heard) =>
      askPlain(
        {
          host: "127.0.0.1",
          port: herePort,
          path: one.path,
          ...sent(one, { host: `localhost:${herePort}` }),
        },
        heard,
      ).end(payload(one)),
    );

  function visitor(cookies: readonly string[], token: string): Visitor {
    const cookie = cookies.join("; ");
    const origin = `https://${host}`;
    return {
      cookie,
      session: cookies.find((one) => one.startsWith("__Host-"))?.split("=")[1] ?? "",
      token,
      get: (path, headers = {}) => ask({ path, headers: { cookie, ...headers } }),
      post: (path, fields = {}, headers = {}) =>
        ask({
          method: "POST",
          path,
          headers: { cookie, origin, ...headers },
          fields: { _csrf: token, ...fields },
        }),
    };
  }

  return {
    at,
    access,
    room,
    host,
    herePort,
    folder,
    ask,
    askHere,
    async signedIn(initials, role) {
      if (!access.people.byInitials(initials))
        access.people.add({
          name: initials,
          initials,
          role,
          passphrase: await hashed,
        });
      // the session itself begins as `sign-in.test.ts` sees it begin; here many are needed, and few forms a minute are taken
      const session = access.sessions.begin(access.people.byInitials(initials)!);
      const first = await ask({
        path: "/sign-in",
        headers: { cookie: `__Host-underhook-session=${session}` },
      });
      const token = /name="_csrf" value="([^"]+)"/.exec(first.body)?.[1] ?? "";
      return visitor([`__Host-underhook-session=${session}`, ...first.cookies], token);
    },
    async close() {
      agent.destroy();
      opened.close();
      await listener.close();
      await at.close();
    },
  };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** The answer as a whole; of a stream its head alone. */
function answered(send: (heard: (response: IncomingMessage) => void) => ClientRequest): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const request = send((response) => {
      const isStream = response.headers["content-type"]?.startsWith("text/event-stream") === true;
      const cookies = (response.headers["set-cookie"] ?? []).map((one) => one.split(";")[0] ?? "");
      const answer = { status: response.statusCode ?? 0, headers: response.headers, cookies };
      if (isStream) {
        response.on("error", () => undefined);
        response.destroy();
        resolve({ ...answer, body: "" });
      } else text(response).then((body) => resolve({ ...answer, body }), reject);
    });
    request.on("error", (error) => reject(new Error(`${request.method} ${request.path}`, { cause: error })));
  });
}
