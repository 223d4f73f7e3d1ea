import type { Remedy } from "./check.ts";
import type { Found, ProcedureCheck } from "./procedure-check.ts";
import type { Situation } from "./situation.ts";

/** Common practice: water and room within 1 °C before precise work; beyond 3 °C convection and bubbles show. */
const tolerableCelsius = 3;
/** No room where people weigh is as cold as this (common practice); water that is comes from the tap or the refrigerator. */
const coldestRoomCelsius = 12;

const letStand: Remedy = { code: "check.remedy.let-stand" };
const coldTap: Remedy = { code: "check.remedy.cold-tap" };

/** Water much warmer or colder than the room: it drags on the piece, grows bubbles, and its temperature runs away. */
export const waterUnlikeRoom: ProcedureCheck = {
  code: "check.water-unlike-room",
  detect({ waterCelsius, roomCelsius }) {
    if (waterCelsius === undefined || waterCelsius > 40) return undefined;
    if (waterCelsius <= 0.2) return freezing(waterCelsius);
    return roomCelsius === undefined ? coldByItself(waterCelsius) : unlike(waterCelsius, roomCelsius);
  },
};

function unlike(waterCelsius: number, roomCelsius: NonNullable<Situation["roomCelsius"]>): Found | undefined {
  const warmer = waterCelsius - roomCelsius;
  if (Math.abs(warmer) <= tolerableCelsius) return undefined;
  return {
    severity: "warn",
    params: {
      case: "room",
      water: waterCelsius,
      room: roomCelsius,
      difference: Math.abs(warmer),
      side: warmer > 0 ? "warmer" : "colder",
    },
    remedies: [letStand, coldTap],
  };
}

function coldByItself(waterCelsius: number): Found | undefined {
  if (waterCelsius >= coldestRoomCelsius) return undefined;
  return {
    severity: "warn",
    params: { case: "cold", water: waterCelsius, room: 0, difference: 0, side: "colder" },
    remedies: [letStand, coldTap],
  };
}

function freezing(waterCelsius: number): Found {
  return {
    severity: "stop",
    params: { case: "ice", water: waterCelsius, room: 0, difference: 0, side: "colder" },
    remedies: [{ code: "check.remedy.read-thermometer" }, { code: "check.remedy.ice-lifts" }],
  };
}
