// Takes pictures of the gallery for a person to look at: npx tsx test/views/gallery/draw.ts [NAME …]
// They land in test/output/gallery/ as NAME-WIDTH-THEME.png.
import { mkdirSync } from "node:fs";
import { launchBrowser } from "../../setup/browser.ts";
import { gallery } from "./index.tsx";
import { serveGallery } from "./serve.ts";

const asked = process.argv.slice(2);
const out = "test/output/gallery";
mkdirSync(out, { recursive: true });
const { address, close } = await serveGallery();
const browser = await launchBrowser();
for (const { name } of gallery.filter(({ name }) => asked.length === 0 || asked.includes(name))) {
  for (const [width, height, theme] of [
    [3840, 2160, "light"],
    [360, 740, "light"],
    [1280, 800, "dark"],
    [1280, 800, "light"],
    [360, 740, "dark"],
  ] as const) {
    const tab = await browser.newPage({ viewport: { width, height } });
    tab.on("console", (message) => {
      if (message.type() === "error") console.log(`${name} ${width} ${theme}: ${message.text()}`);
    });
    await tab.goto(`${address}/${name}?theme=${theme}`);
    await tab.screenshot({ path: `${out}/${name}-${width}-${theme}.png`, fullPage: true });
    await tab.close();
  }
}
await browser.close();
await close();
