import { join } from "node:path";
import { programFolder } from "../program-folder.ts";

const folder = join(programFolder, "views", "assets", "fonts");

/** DejaVu Sans, shipped with the program (licence beside it): the built-in PDF fonts lack ρ, ν and °. */
export const reportFonts = {
  regular: join(folder, "DejaVuSans.ttf"),
  bold: join(folder, "DejaVuSans-Bold.ttf"),
};
