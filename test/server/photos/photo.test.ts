import { expect, test } from "vitest";
import { Refusal } from "../../../calibration/refusal.ts";
import { photoFrom, photoLimit } from "../../../server/photos/photo.ts";
import { jpeg, png, secrets, talkativePng, talkativeWebp, telephoneJpeg, webp } from "./pictures.ts";

const holds = (bytes: Buffer) => secrets.filter((secret) => bytes.includes(secret));

test("of a telephone's JPEG only the picture is left: no place, time, camera, comment, preview or second picture", () => {
  expect(holds(telephoneJpeg())).toEqual(secrets);
  const { bytes, type } = photoFrom(telephoneJpeg());
  expect(type).toBe("image/jpeg");
  expect(holds(bytes)).toEqual([]);
  // tag 0x8825 of Exif 2.3 points to the GPS directory, in either byte order
  expect(bytes.includes(Buffer.from([0x25, 0x88, 0x04, 0x00]))).toBe(false);
  expect(bytes.includes(Buffer.from([0x88, 0x25, 0x00, 0x04]))).toBe(false);
});

test("the scan and its tables stay byte for byte, so the picture is the same", () => {
  const { bytes } = photoFrom(telephoneJpeg(1));
  // the segments of the clean picture after its APP0, which only states pixel density
  const afterApp0 = 2 + 2 + jpeg.readUInt16BE(4);
  expect(bytes.equals(Buffer.concat([Buffer.from([0xff, 0xd8]), jpeg.subarray(afterApp0)]))).toBe(true);
});

test("a picture that lies on its side is told as it stands", () => {
  expect(photoFrom(telephoneJpeg(1))).toMatchObject({ width: 24, height: 16 });
  expect(photoFrom(telephoneJpeg(6))).toMatchObject({ width: 16, height: 24 });
});

test("PNG and WebP lose what does not draw, and stripping again changes nothing", () => {
  for (const [given, plain] of [
    [talkativePng(), png],
    [talkativeWebp(), webp],
  ] as const) {
    const stripped = photoFrom(given);
    expect(holds(stripped.bytes)).toEqual([]);
    expect(stripped).toMatchObject({ width: 24, height: 16 });
    expect(photoFrom(stripped.bytes).bytes.equals(stripped.bytes)).toBe(true);
    expect(photoFrom(plain).bytes.length).toBeLessThanOrEqual(plain.length);
  }
});

const refusal = (code: string) => expect.objectContaining({ code });

test("what is no picture, broken off or too large is refused in words", () => {
  expect(() => photoFrom(Buffer.alloc(0))).toThrow(refusal("photo.refusal.none"));
  expect(() => photoFrom(Buffer.from("<svg xmlns='http://www.w3.org/2000/svg'/>"))).toThrow(
    refusal("photo.refusal.other-type"),
  );
  expect(() => photoFrom(jpeg.subarray(0, jpeg.length - 20))).toThrow(refusal("photo.refusal.damaged"));
  expect(() => photoFrom(png.subarray(0, 60))).toThrow(refusal("photo.refusal.damaged"));
  expect(() => photoFrom(Buffer.alloc(photoLimit + 1))).toThrow(refusal("photo.refusal.too-large"));
  // the frame of a small file may name any size (ITU-T T.81, B.2.2: lines, then samples a line)
  const huge = Buffer.from(jpeg);
  const frame = huge.indexOf(Buffer.from([0xff, 0xc0]));
  huge.writeUInt16BE(40_000, frame + 5);
  huge.writeUInt16BE(40_000, frame + 7);
  expect(() => photoFrom(huge)).toThrow(refusal("photo.refusal.too-many-pixels"));
});

test("whatever bytes come, it is a picture or a refusal in words", () => {
  for (const whole of [telephoneJpeg(), talkativePng(), talkativeWebp()])
    for (let at = 0; at < whole.length; at++) {
      const changed = Buffer.from(whole);
      changed[at] = (changed[at]! + 131) % 256;
      try {
        expect(photoFrom(changed).bytes.length).toBeLessThanOrEqual(whole.length);
      } catch (error) {
        expect(error).toBeInstanceOf(Refusal);
      }
    }
});
