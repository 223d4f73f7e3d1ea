import { type AskedLines, requestBytes } from "./asked-lines.ts";
import { balanceName, nameMessage } from "./balance-name.ts";
import type { Cable, OpenCable } from "./cable.ts";
import { createCabledDevice } from "./cabled-device.ts";
import { type Clock, systemClock } from "./clock.ts";
import type { Balance, Device } from "./device.ts";
import { unescapeText } from "./escape.ts";
import { lineText } from "./line.ts";
import { createLineRecords, type LineRecords } from "./line-records.ts";
import { type BytesReader, lineEvent, type Reading } from "./reading.ts";
import { unknownLine } from "./shapes/index.ts";

/** A line of the bus, whoever sent it. */
export interface BusLine {
  text: string;
  bytes: Uint8Array;
}

interface Member {
  name: string;
  request: Uint8Array | null;
  echo: string;
  read: BytesReader;
  records: LineRecords;
  askedInVain: number;
}

export interface BusOptions {
  /** path of the port or host:port, for messages */
  address: string;
  open: OpenCable<BusLine>;
  clock?: Clock;
  /** how long an answer may take, ms; a balance answers within a few line times */
  answerMs?: number;
}

/** Several balances on one pair of wires (RS-485), each asked in turn by a request that carries its own address. */
export interface Bus {
  /** One balance of the bus. Without a request of its own it is never asked and stays silent. Throws Refusal. */
  member(name: string, how: { ask?: AskedLines | undefined; read: () => BytesReader }): Balance;
}

/** After a balance did not answer the bus is left alone for so many answer times, so that a late line is nobody's. */
const quietTimes = 4;
const usualAnswerMs = 250;
/** A reading of a bus is old after so long, ms: a dozen balances have then been asked twice. */
const freshForMs = 6000;
/** So many requests in vain before its silence is told. */
const vainRequests = 4;

/**
 * Asks one balance after another and gives a line only to the one that was asked, and only where exactly one came in
 * its time: what answers late or at once with another is refused, never taken for somebody else's weight.
 */
export function createBus({ address, open, clock = systemClock, answerMs = usualAnswerMs }: BusOptions): Bus {
  let members: Member[] = [];
  let cable: Cable | null = null;
  let asked: Member | undefined;
  let answers: (BusLine & { raw: string })[] = [];
  /** the first line after opening may have been cut, so the answers to the first request are nobody's */
  let justOpened = true;
  let callOff = () => {};

  const wire: Device<BusLine> = createCabledDevice<BusLine>({
    name: balanceName.serial(address),
    clock,
    patienceMs: Number.POSITIVE_INFINITY,
    read: () => (text, bytes) => ({ reading: { text, bytes: Uint8Array.from(bytes) } }),
    async open(ear) {
      const opened = await open(ear);
      cable = opened;
      justOpened = true;
      return opened;
    },
  });
  wire.onLine((record) => {
    if (record.reading) {
      if (asked && record.reading.text.trim() !== asked.echo)
        answers.push({ ...record.reading, raw: record.raw });
      return;
    }
    const { event } = record;
    if (event.kind === "lost" || event.kind === "refused") cable = null;
    for (const { records } of members) records.event({ event });
  });

  function turn(): void {
    const asking = members.filter(({ request }) => request !== null);
    const next = asking[(asking.indexOf(asked as Member) + 1) % Math.max(1, asking.length)];
    if (!cable || !next?.request) {
      callOff = clock.after(answerMs, turn);
      return;
    }
    asked = next;
    answers = [];
    cable.send(next.request);
    callOff = clock.after(answerMs, () => answered(next));
  }

  function answered(member: Member): void {
    const [answer, ...more] = answers;
    answers = [];
    if (justOpened) {
      justOpened = false;
      callOff = clock.after(0, turn);
      return;
    }
    if (answer && more.length === 0) {
      member.askedInVain = 0;
      member.records.line(answer.raw, member.read(answer.text, answer.bytes) ?? unknownLine(answer.text));
      callOff = clock.after(0, turn);
      return;
    }
    if (answer)
      member.records.event(
        lineEvent("line.damaged.bus", { balance: nameMessage(member.name), lines: more.length + 1 }),
      );
    else notAnswered(member);
    // whatever still comes belongs to no request
    callOff = clock.after(quietTimes * answerMs, turn);
  }

  function notAnswered(member: Member): void {
    member.askedInVain += 1;
    if (member.askedInVain !== vainRequests) return;
    const seconds = Math.round((vainRequests * quietTimes * answerMs) / 1000);
    member.records.event(
      lineEvent("line.silent.asked", { balance: nameMessage(member.name), request: member.echo, seconds }),
    );
  }

  async function leave(member: Member): Promise<void> {
    members = members.filter((one) => one !== member);
    if (members.length > 0) return;
    callOff();
    asked = undefined;
    await wire.stop();
    cable = null;
  }

  return {
    member(place, { ask, read }) {
      const name = balanceName.serial(`${address}#${place}`);
      const records = createLineRecords<Reading>(clock);
      const member: Member = {
        name,
        request: ask ? requestBytes(ask) : null,
        echo: ask ? lineText(unescapeText(ask.request)).trim() : "",
        read: read(),
        records,
        askedInVain: 0,
      };
      return {
        name,
        patienceMs: freshForMs,
        onLine: records.onLine,
        start() {
          if (members.includes(member)) return;
          members = [...members, member];
          if (members.length > 1) return;
          wire.start();
          turn();
        },
        stop: () => leave(member),
      };
    },
  };
}

const buses = new Map<string, Bus>();

/** The bus at this port with these line settings: every balance of one port shares one. */
export function busAt(port: string, line: string, make: () => Bus): Bus {
  const name = `${port} ${line}`;
  const found = buses.get(name) ?? make();
  buses.set(name, found);
  return found;
}

/** "/dev/ttyUSB0#7": the port, and which balance of its bus; undefined for an address without. */
export function busPlace(address: string): { port: string; place: string } | undefined {
  const [, port, place] = /^(\/[^#]+)#([\w.-]{1,20})$/.exec(address) ?? [];
  return port !== undefined && place !== undefined ? { port, place } : undefined;
}
