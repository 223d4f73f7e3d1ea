const exifName = "Exif\0\0";
/** Tag 274 of TIFF 6.0, which Exif uses: 1 to 8, how the stored rows stand. */
const orientationTag = 0x0112;

/** How an Exif segment says the picture is turned; undefined when it does not say. */
export function orientationIn(data: Buffer): number | undefined {
  if (data.subarray(0, 6).toString("latin1") !== exifName || data.length < 14) return undefined;
  const tiff = data.subarray(6);
  const little = tiff.subarray(0, 2).toString("latin1") === "II";
  const two = (at: number) => (little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at));
  const four = (at: number) => (little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at));
  try {
    const first = four(4);
    for (let entry = 0; entry < two(first); entry++) {
      const at = first + 2 + 12 * entry;
      const turned = two(at + 8);
      if (two(at) === orientationTag) return turned >= 1 && turned <= 8 ? turned : undefined;
    }
  } catch (error) {
    // Exif data that points outside of itself says nothing; the picture is whole without it.
    if (!(error instanceof RangeError)) throw error;
  }
  return undefined;
}

/** An Exif segment that holds nothing but how the picture is turned. */
export function orientationOnly(orientation: number): Buffer {
  const tiff = Buffer.alloc(26);
  tiff.write("MM\0*", "latin1");
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(orientationTag, 10);
  tiff.writeUInt16BE(3, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  const data = Buffer.concat([Buffer.from(exifName, "latin1"), tiff]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(data.length + 2, 2);
  return Buffer.concat([head, data]);
}
