import { type Message, message } from "../calibration/message.ts";

/**
 * The name of a balance as captures and checks keep it: what tells it from the others, the same in every language.
 * `nameMessage` tells it to a person.
 */
export const balanceName = {
  serial: (port: string) => `balance on ${port}`,
  network: (address: string) => `balance at ${address}`,
  usb: (port: string) => `USB scale on ${port}`,
  simulated: "simulated balance",
  sensor: (address: string) => `sensor on ${address}`,
  recorded: "recorded balance",
};

/** The address in the name of a sensor; undefined for a name of another form. */
export const sensorAddress = (name: string): string | undefined => /^sensor on (.+)$/s.exec(name)?.[1];

/** The name of a balance as a message with its port as a value; a name of another form is shown as it stands. */
export function nameMessage(name: string): Message | string {
  if (name === balanceName.simulated) return message("balance.name.simulated");
  if (name === balanceName.recorded) return message("balance.name.recorded");
  const [, form, place = ""] = /^(balance on|balance at|USB scale on|sensor on) (.+)$/s.exec(name) ?? [];
  if (form === "balance on") return message("balance.name.serial", { port: place });
  if (form === "balance at") return message("balance.name.network", { address: place });
  if (form === "sensor on") return message("sensor.name", { address: place });
  return form === undefined ? name : message("balance.name.usb", { port: place });
}
