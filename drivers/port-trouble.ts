/** What keeps a port from opening, in the words of the operating system. */
export interface PortTrouble {
  /** error code of a file access, such as ENOENT or EACCES, when known */
  code?: string | undefined;
  message: string;
}

/**
 * A whole sentence for a port that cannot be opened: what is wrong, with which port, and what to do.
 * The serial library gives no codes, so its messages are matched too.
 */
export function portTroubleInWords(path: string, { code, message }: PortTrouble): string {
  const says = (pattern: RegExp) => pattern.test(message);
  if (code === "EACCES" || code === "EPERM" || says(/permission denied|operation not permitted/i))
    return (
      `No permission to open ${path}: your user is not in the group that owns it (dialout on most systems). ` +
      "Run: sudo usermod -aG dialout $USER, then log out and in again."
    );
  if (code === "EBUSY" || says(/cannot lock port|resource busy|temporarily unavailable/i))
    return `${path} is in use by another program. Close that program, or unplug the balance and plug it in again.`;
  if (code === "ENOENT" || code === "ENXIO" || code === "ENODEV" || says(/no such (file|device)/i))
    return `There is no port ${path}. Plug the balance in and switch it on; it is tried again by itself. If it came back under another name, choose the name under /dev/serial/by-id.`;
  if (code === "ENOTTY" || says(/inappropriate ioctl|invalid argument|not a tty/i))
    return `${path} is not a serial port. Choose a port such as /dev/serial/by-id/… or /dev/ttyUSB0.`;
  return `${path} could not be opened: ${message}. It is tried again by itself.`;
}
