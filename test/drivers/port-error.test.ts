import { expect, test } from "vitest";
import { lineSettingsText, parseLineSettings } from "../../drivers/line-settings.ts";
import { portRefused } from "../../drivers/port-error.ts";

test("a missing permission is known by its code and by the words of the system", () => {
  for (const error of [
    { code: "EACCES", message: "" },
    { message: "Error: Permission denied, cannot open /dev/ttyUSB0" },
  ])
    expect(portRefused("/dev/ttyUSB0", error)).toMatchObject({
      code: "line.refused.permission",
      params: { port: "/dev/ttyUSB0" },
    });
});

test("line settings are read and written in one manner", () => {
  for (const text of ["9600-8n1", "2400-7e1", "1200-7o2-xon-xoff", "115200-8n1-rts-cts"])
    expect(lineSettingsText(parseLineSettings(text))).toBe(text);
});

test("wrong line settings say what would be right", () => {
  for (const text of ["9600", "9600-9n1", "9601-8n1", "9600-8x1", "9600-8n1-fast"])
    expect(() => parseLineSettings(text)).toThrow(
      expect.objectContaining({
        code: "port.settings",
        at: "line",
        params: expect.objectContaining({ settings: text }),
      }),
    );
});
