import type { Watch } from "./watch.ts";

/** Common practice: water and room within 1 °C before precise work; beyond 3 °C convection and bubbles show. */
const tolerableCelsius = 3;

/** Water much warmer or colder than the room: it drags on the piece, grows bubbles, and its temperature runs away. */
export const waterUnlikeRoom: Watch = {
  kind: "water-unlike-room",
  look({ waterCelsius, roomCelsius }) {
    if (waterCelsius === undefined || roomCelsius === undefined) return undefined;
    const warmer = waterCelsius - roomCelsius;
    if (Math.abs(warmer) <= tolerableCelsius || waterCelsius > 40) return undefined;
    return {
      says: `The water is at ${waterCelsius} °C and the room at ${roomCelsius} °C: ${Math.abs(warmer).toFixed(1)} °C ${warmer > 0 ? "warmer" : "colder"}.`,
      ask: "Has the water stood in the room, and was the thermometer in the beaker?",
      remedies: [
        {
          says: "Let the beaker stand for an hour, better overnight, then read the thermometer in the water.",
        },
        { says: "Cold tap water grows bubbles while it warms: boil and cool it first." },
      ],
      blocking: false,
    };
  },
};
