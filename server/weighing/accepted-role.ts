import { message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import { type MethodName, type Role, rolesOf, takes } from "../methods/index.ts";

/** Throws Refusal when the method has no such reading. */
export function mustAccept(method: MethodName, role: Role): void {
  if (takes(method, role)) return;
  throw new Refusal("weighing.reading.not-of-method", {
    method: message(`method.${method}.name`),
    role: message(`bench.roles.${role}`),
    roles: rolesOf(method).map((one) => message(`bench.roles.${one}`)),
  });
}
