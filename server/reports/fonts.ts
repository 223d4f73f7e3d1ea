import { existsSync } from "node:fs";
import { dirname, join } from "node:path";

/** DejaVu Sans, shipped with the program (licence beside it): the built-in PDF fonts lack ρ, ν and °. */
export function reportFonts(): { regular: string; bold: string } {
  for (let folder = import.meta.dirname; ; folder = dirname(folder)) {
    const fonts = join(folder, "views", "assets", "fonts");
    if (existsSync(join(fonts, "DejaVuSans.ttf")))
      return { regular: join(fonts, "DejaVuSans.ttf"), bold: join(fonts, "DejaVuSans-Bold.ttf") };
    if (dirname(folder) === folder)
      throw new Error(
        `The report fonts were not found above ${import.meta.dirname}. Right: views/assets/fonts/DejaVuSans.ttf in the program's folder; install the program again.`,
      );
  }
}
