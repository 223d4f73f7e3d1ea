/**
 * Three small pictures of 24 × 16 pixels, drawn on a browser's canvas and free of metadata, and what a telephone would
 * put into them. Invented.
 */
const jpegText =
  "/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAAYEBQYFBAYGBQYHBwYIChAKCgkJChQODwwQFxQYGBcUFhYaHSUfGhsjHBYWICwgIyYnKSopGR8tMC0oMCUoKSj/2wBDAQcHBwoIChMKChMoGhYaKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCgoKCj/wAARCAAQABgDASIAAhEBAxEB/8QAFgABAQEAAAAAAAAAAAAAAAAAAAYF/8QAIBAAAAYCAgMAAAAAAAAAAAAAAAECAwQRBQYSEyEyQf/EABcBAAMBAAAAAAAAAAAAAAAAAAMEBQf/xAAdEQACAgIDAQAAAAAAAAAAAAABAgADESEEMUFx/9oADAMBAAIRAxEAPwCZ3TL7nF2WYzhW5ysenh1G1CJxPokzpXA7839FtpcjIytahvZonU5BXPtJ1vrV7qIrTRV4r4NsBn9/MS2lahWFIxsDZwMb+9y3XSUcuWJz5AAARh5//9k=";
const pngText =
  "iVBORw0KGgoAAAANSUhEUgAAABgAAAAQCAYAAAAMJL+VAAAAVElEQVR4AeyQuw0AIAhEibV7uIpjMYtTuIL72GtHB5dgiA0m18jnkVfWaCcyhYKfADpXsuK9QwDeBWguAcgQiaLJm6zATUqDAJT683cCoMJU9F/RBQAA//9oQSH1AAAABklEQVQDAGk6VbmswRGYAAAAAElFTkSuQmCC";
const webpText =
  "UklGRooAAABXRUJQVlA4IH4AAACwAwCdASoYABAAPm0qkUWkIqGYBABABsSzAE6ZQIo8JQAK5ktZQAD2v3WO/pPunvRpnu0cENiej7sZvvWM9fvC7JVkRGMzCQLxr9aJ0Tk/z9Sv94D7mzUVD/5A09vbPNTwf/9Tj+vtLvfQal/S7WnQ+hsX6nvX2leLVg4AAAA=";

export const jpeg = Buffer.from(jpegText, "base64");
export const png = Buffer.from(pngText, "base64");
export const webp = Buffer.from(webpText, "base64");

/** What must never be left: written into the metadata below. */
export const secrets = ["Kay Street 5", "Lens 77", "GPSPLACE", "2026:03:02", "preview of the sitting room"];

/**
 * A JPEG as a telephone writes it: Exif (TIFF 6.0) with camera, time, a GPS directory and the picture lying on its
 * side, XMP, a comment, and after the end of the picture a second one that a video or a preview would be.
 */
export function telephoneJpeg(orientation = 6): Buffer {
  const exif = Buffer.alloc(140);
  exif.write("Exif\0\0II*\0", "latin1");
  const tiff = exif.subarray(6);
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(3, 8);
  const entry = (place: number, tag: number, type: number, count: number, value: number) => {
    const at = 10 + 12 * place;
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  entry(0, 0x010f, 2, 8, 60);
  entry(1, 0x0112, 3, 1, orientation);
  entry(2, 0x8825, 4, 1, 80);
  tiff.write("Lens 77\0", 60, "latin1");
  tiff.write("GPSPLACE 54.30N 10.12E 2026:03:02", 80, "latin1");
  const comment = segment(0xfe, Buffer.from("Kay Street 5"));
  const xmp = segment(0xe1, Buffer.from("http://ns.adobe.com/xap/1.0/\0<x>Kay Street 5</x>"));
  return Buffer.concat([
    jpeg.subarray(0, 2),
    segment(0xe1, exif),
    xmp,
    comment,
    jpeg.subarray(2),
    Buffer.from("preview of the sitting room"),
    jpeg,
  ]);
}

function segment(marker: number, data: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(data.length + 2, 2);
  return Buffer.concat([head, data]);
}

/** A PNG with a text chunk and the Exif of a camera, each with a check sum nobody looks at. */
export function talkativePng(): Buffer {
  const chunk = (name: string, data: string) => {
    const head = Buffer.alloc(4);
    head.writeUInt32BE(data.length);
    return Buffer.concat([head, Buffer.from(name + data, "latin1"), Buffer.alloc(4)]);
  };
  return Buffer.concat([
    png.subarray(0, 33),
    chunk("tEXt", "Comment\0Kay Street 5"),
    chunk("eXIf", "GPSPLACE"),
    chunk("tIME", "2026:03:02"),
    png.subarray(33),
    Buffer.from("preview of the sitting room"),
  ]);
}

/** The same WebP in its extended form with a profile, Exif and XMP (RFC 9649, 2.7). */
export function talkativeWebp(): Buffer {
  const chunk = (name: string, data: Buffer) => {
    const head = Buffer.alloc(8);
    head.write(name, "latin1");
    head.writeUInt32LE(data.length, 4);
    return Buffer.concat([head, data, Buffer.alloc(data.length % 2)]);
  };
  const extended = Buffer.from([0x20 | 0x08 | 0x04, 0, 0, 0, 23, 0, 0, 15, 0, 0]);
  const body = Buffer.concat([
    chunk("VP8X", extended),
    chunk("ICCP", Buffer.from("Lens 77")),
    webp.subarray(12),
    chunk("EXIF", Buffer.from("GPSPLACE")),
    chunk("XMP ", Buffer.from("Kay Street 5")),
  ]);
  const head = Buffer.from("RIFF....WEBP", "latin1");
  head.writeUInt32LE(body.length + 4, 4);
  return Buffer.concat([head, body]);
}
