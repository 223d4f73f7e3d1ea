import type { Situation } from "./situation.ts";
import type { Seen, Watch } from "./watch.ts";

/** Common practice: water and room within 1 °C before precise work; beyond 3 °C convection and bubbles show. */
const tolerableCelsius = 3;
/** No room where people weigh is as cold as this (common practice); water that is comes from the tap or the refrigerator. */
const coldestRoomCelsius = 12;

const letStand =
  "Let the beaker stand for an hour, better overnight, then read the thermometer in the water.";
const coldTap = "Cold tap water grows bubbles while it warms: boil and cool it first.";

/** Water much warmer or colder than the room: it drags on the piece, grows bubbles, and its temperature runs away. */
export const waterUnlikeRoom: Watch = {
  kind: "water-unlike-room",
  look({ waterCelsius, roomCelsius }) {
    if (waterCelsius === undefined || waterCelsius > 40) return undefined;
    if (waterCelsius <= 0.2) return freezing(waterCelsius);
    return roomCelsius === undefined ? coldByItself(waterCelsius) : unlike(waterCelsius, roomCelsius);
  },
};

function unlike(waterCelsius: number, roomCelsius: NonNullable<Situation["roomCelsius"]>): Seen | undefined {
  const warmer = waterCelsius - roomCelsius;
  if (Math.abs(warmer) <= tolerableCelsius) return undefined;
  return {
    says: `The water is at ${waterCelsius} °C and the room at ${roomCelsius} °C: ${Math.abs(warmer).toFixed(1)} °C ${warmer > 0 ? "warmer" : "colder"}.`,
    ask: "Has the water stood in the room, and was the thermometer in the beaker?",
    remedies: [{ says: letStand }, { says: coldTap }],
    blocking: false,
  };
}

function coldByItself(waterCelsius: number): Seen | undefined {
  if (waterCelsius >= coldestRoomCelsius) return undefined;
  return {
    says: `The water is at ${waterCelsius} °C, colder than a room. Its density is known there, so the result stands as stated, but bubbles will grow on the piece while it warms.`,
    ask: "Does it come fresh from the tap or the refrigerator?",
    remedies: [{ says: letStand }, { says: coldTap }],
    blocking: false,
  };
}

function freezing(waterCelsius: number): Seen {
  return {
    says: `The water is stated at ${waterCelsius} °C, where it freezes.`,
    ask: "Is there ice in the beaker, or was the thermometer off or not yet read?",
    remedies: [
      { says: "Read the thermometer in the water again, in °C." },
      { says: "Ice lifts the piece: take it out and let the beaker stand in the room." },
    ],
    blocking: true,
  };
}
