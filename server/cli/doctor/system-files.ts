import { builtProgram } from "../../program-folder.ts";

/** A file for the system, with the place it belongs to below its root. */
export interface SystemFile {
  place: string;
  text: string;
}

/** A USB device that is plugged in, by its vendor and product, four hexadecimal digits each. */
export interface UsbDevice {
  subsystem: "tty" | "hidraw";
  vendor: string;
  product: string;
}

/** "… 1a2b:0003 …" of an identity; undefined for a device that is not on USB. */
export function usbDevice(subsystem: UsbDevice["subsystem"], identity: string | null): UsbDevice | undefined {
  const [, vendor, product] = /\b([0-9a-fA-F]{4}):([0-9a-fA-F]{4})\b/.exec(identity ?? "") ?? [];
  return vendor && product
    ? { subsystem, vendor: vendor.toLowerCase(), product: product.toLowerCase() }
    : undefined;
}

/**
 * Device rules for exactly the devices that are plugged in, and a unit that starts the bench with the machine. Devices of
 * other kinds, keyboards among them, get no right by these rules.
 */
export function systemFiles(devices: readonly UsbDevice[], dataFolder: string): SystemFile[] {
  const rules = devices.map(({ subsystem, vendor, product }) =>
    [
      `SUBSYSTEM=="${subsystem}"`,
      `ATTRS{idVendor}=="${vendor}"`,
      `ATTRS{idProduct}=="${product}"`,
      'GROUP="dialout"',
      'MODE="0660"',
      ...(subsystem === "tty" ? ['ENV{ID_MM_DEVICE_IGNORE}="1"'] : []),
    ].join(", "),
  );
  return [
    {
      place: "etc/udev/rules.d/70-underhook.rules",
      text: `# Balances and sensors of the bench, as they were plugged in when this was written\n${[...new Set(rules)].join("\n")}\n`,
    },
    { place: "etc/systemd/system/underhook.service", text: unit(dataFolder) },
  ];
}

function unit(dataFolder: string): string {
  return `[Unit]
Description=Underhook, a hydrostatic density bench
After=local-fs.target

[Service]
ExecStart="${process.execPath}" "${builtProgram}" serve --data "${dataFolder}"
StateDirectory=underhook
DynamicUser=yes
SupplementaryGroups=dialout
Restart=on-failure
NoNewPrivileges=yes
ProtectSystem=strict
ProtectHome=read-only
PrivateTmp=yes

[Install]
WantedBy=multi-user.target
`;
}
