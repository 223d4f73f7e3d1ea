import { type Message, message } from "../../../calibration/message.ts";
import { type FoundScale, listScales } from "../../../drivers/hid/scales.ts";
import { type FoundPort, listPorts, type PortRoots, portNamed } from "../../../drivers/ports.ts";
import type { PortRow } from "../../../views/balances/ports.tsx";
import { cableOf } from "../../station/balance-choice.ts";
import type { BalanceInUse } from "../../station/balance-in-use.ts";

/** What the answers, the request and the profile of a balance are bound to, and why. */
export function keptFor(address: string, roots?: PortRoots): Message {
  if (cableOf(address) === "network") return message("balance.kept-for.network");
  if (cableOf(address) === "usb-scale") return message("balance.kept-for.usb");
  const port = portNamed(address, roots);
  if (port === undefined) return message("balance.kept-for.path");
  if (port.stableBy === "socket") return message("balance.kept-for.socket");
  return port.stableBy === "device"
    ? message("balance.kept-for.device", { identity: port.identity ?? port.path })
    : message("balance.kept-for.nothing", { device: port.device });
}

/** The ports of this machine, USB scales, and the address in use when it is neither. */
export function portRows(balance: BalanceInUse): PortRow[] {
  const chosen = balance.choice?.address;
  const beside = new Set(balance.others.map(({ address }) => address));
  const row = (names: [string, ...string[]], text: Message, serial: boolean): PortRow => {
    const [stableName, todayName] = names;
    const isChosen = chosen !== undefined && names.includes(chosen);
    return {
      stableName,
      ...(todayName === undefined || todayName === stableName ? {} : { todayName }),
      state: message(isChosen ? "port.state.in-use" : "port.state.free"),
      message: text,
      chosen: isChosen,
      beside: names.some((name) => beside.has(name)),
      mayBeBeside: chosen !== undefined,
      serial,
    };
  };
  const rows = [
    ...listPorts().map((port) => row([port.path, port.device], portMessage(port), true)),
    ...listScales().map((scale) => row([scale.path], scaleMessage(scale), false)),
  ];
  if (chosen === undefined || rows.some((one) => one.chosen)) return rows;
  const serial = cableOf(chosen) === "serial";
  return [row([chosen], message(serial ? "port.as-typed" : "port.as-typed.network"), serial), ...rows];
}

/** What sits at a port and what its name is worth. */
function portMessage({ identity, stableBy }: FoundPort): Message {
  const worth = message(`port.worth.${stableBy}`);
  return identity === null ? worth : message("port.listed", { identity, worth });
}

/** What a USB scale is, and what its reports cannot tell. */
export function scaleMessage({ identity, reports }: FoundScale): Message {
  const facts = { identity, steps: reports.largestSteps };
  return message(reports.signed ? "port.usb-scale" : "port.usb-scale.unsigned", facts);
}
