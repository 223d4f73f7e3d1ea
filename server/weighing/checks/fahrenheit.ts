import type { Watch } from "./watch.ts";

/** Liquid water the density formula accepts ends at 40 °C; a basin of water stands between about 2 and 40 °C. */
const hottestBasin = 40;
const coldestBasin = 2;

/** A water temperature that is no basin of water in °C but an ordinary one in °F. */
export const fahrenheit: Watch = {
  kind: "fahrenheit",
  look({ waterCelsius }) {
    if (waterCelsius === undefined || waterCelsius <= hottestBasin) return undefined;
    const celsius = (waterCelsius - 32) / 1.8;
    if (celsius < coldestBasin || celsius > hottestBasin) return undefined;
    const rounded = Math.round(celsius * 10) / 10;
    return {
      says: `Water at ${waterCelsius} °C would be too hot to keep a hand in; ${waterCelsius} °F is ${rounded.toFixed(1)} °C.`,
      ask: `Was the thermometer read in °F? Then the water is at ${rounded.toFixed(1)} °C.`,
      remedies: [
        { says: `Enter ${rounded.toFixed(1)} °C.`, offer: { do: "set-celsius", celsius: rounded } },
        { says: "Read the thermometer in the water again, in °C." },
      ],
      blocking: true,
    };
  },
};
