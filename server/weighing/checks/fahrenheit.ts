import type { ProcedureCheck } from "./procedure-check.ts";

/** Liquid water the density formula accepts ends at 40 °C; a basin of water stands between about 2 and 40 °C. */
const hottestBasin = 40;
const coldestBasin = 2;

/** A water temperature that is no basin of water in °C but an ordinary one in °F. */
export const fahrenheit: ProcedureCheck = {
  code: "check.fahrenheit",
  detect({ waterCelsius }) {
    if (waterCelsius === undefined || waterCelsius <= hottestBasin) return undefined;
    const celsius = (waterCelsius - 32) / 1.8;
    if (celsius < coldestBasin || celsius > hottestBasin) return undefined;
    const rounded = Math.round(celsius * 10) / 10;
    return {
      severity: "stop",
      params: { water: waterCelsius, celsius: rounded },
      remedies: [
        {
          code: "check.remedy.enter-celsius",
          params: { celsius: rounded },
          offer: { do: "set-celsius", celsius: rounded },
        },
        { code: "check.remedy.read-thermometer" },
      ],
    };
  },
};
