import { expect, test } from "vitest";
import { lineSettingsText, parseLineSettings } from "../../drivers/line-settings.ts";
import { portTroubleInWords } from "../../drivers/port-trouble.ts";

test("a missing permission names the group and the command", () => {
  for (const trouble of [
    { code: "EACCES", message: "" },
    { message: "Error: Permission denied, cannot open /dev/ttyUSB0" },
  ])
    expect(portTroubleInWords("/dev/ttyUSB0", trouble)).toMatch(
      /\/dev\/ttyUSB0.*dialout.*sudo usermod -aG dialout \$USER/,
    );
});

test("line settings are read and written in one manner", () => {
  for (const text of ["9600-8n1", "2400-7e1", "1200-7o2-xon-xoff", "115200-8n1-rts-cts"])
    expect(lineSettingsText(parseLineSettings(text))).toBe(text);
});

test("wrong line settings say what would be right", () => {
  for (const text of ["9600", "9600-9n1", "9601-8n1", "9600-8x1", "9600-8n1-fast"])
    expect(() => parseLineSettings(text)).toThrow(
      new RegExp(`"${text}" are not understood\\. Right: .*9600-8n1`),
    );
});
