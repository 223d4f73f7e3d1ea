import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { places } from "../../views/masthead.tsx";
import { locales } from "../../views/messages/language.ts";
import { tellerOf } from "../../views/messages/tell.ts";
import { page, render, styles } from "../../views/page.tsx";
import { htmxNames, policyBreaches, unknownHxNames } from "./markup.ts";

const frame = { title: "Bench", path: "/", csrfToken: "t0ken", demo: true, main: <p>nothing yet</p> };

describe("the frame around every page", () => {
  it("is one document with language, title, skip link, navigation, live region and one heading", () => {
    const html = page(frame);
    expect(html).toMatch(/^<!doctype html><html lang="en"/);
    expect(html).toContain("<title>Bench · Underhook</title>");
    expect(html.match(/<h1>/g)).toHaveLength(1);
    expect(html).toContain('href="#main"');
    expect(html).toContain('aria-live="polite"');
    for (const { path } of places) expect(html).toContain(`href="${path}"`);
  });

  it("marks the place one is at, also below it, and only that one", () => {
    const html = page({ ...frame, path: "/records/12" });
    // once in the line of places and once in the menu of a phone
    expect(html.match(/aria-current/g)).toHaveLength(2);
    expect(html).toMatch(/href="\/records" aria-current="page"/);
  });

  it("says plainly that a demonstration is one, and keeps silent about it otherwise", () => {
    expect(page(frame)).toContain(tellerOf("en")("frame.demo"));
    expect(page({ ...frame, demo: false })).not.toContain(tellerOf("en")("frame.demo"));
  });

  it("escapes text and attribute values", () => {
    const html = page({
      ...frame,
      title: '<script>alert("x")</script>',
      csrfToken: '"><b>',
      main: <p title={'"><i>'}>{"<img src=x onerror=alert(1)>"}</p>,
    });
    expect(html).not.toMatch(/<script>|<b>|<i>|<img/);
  });

  it("needs no inline script, no inline style and no outside host", () => {
    expect(policyBreaches(page(frame))).toEqual([]);
  });

  it("speaks every shipped language", () => {
    for (const locale of locales) {
      const html = page({ ...frame, locale });
      expect(html).toContain(`<html lang="${locale}"`);
      expect(html).toContain(tellerOf(locale)("frame.records"));
    }
  });

  it("has attributes only from htmx's own list", () => {
    expect(htmxNames.size).toBeGreaterThan(40);
    expect(unknownHxNames(page(frame))).toEqual([]);
    expect(unknownHxNames('<p hx-swapp="x" hx-target:inherited="#a" hx-sse:connect="/l">')).toEqual([
      "hx-swapp",
    ]);
  });

  it("loads htmx and its event streams in order and undeferred, so that no page stays deaf", () => {
    const scripts = [...page(frame).matchAll(/<script src="([^"]+)"([^>]*)>/g)].map(([, src, rest]) => [
      src,
      rest,
    ]);
    expect(scripts.slice(0, 2)).toEqual([
      ["/assets/htmx.min.js", ""],
      ["/assets/hx-sse.min.js", ""],
    ]);
  });

  it("weighs less than 100 kB gzipped with everything it loads", () => {
    const files = [
      ...styles.map((name) => `views/assets/${name}`),
      "views/assets/bench.js",
      "views/assets/mark.svg",
      "node_modules/htmx.org/dist/htmx.min.js",
      "node_modules/htmx.org/dist/ext/hx-sse.min.js",
    ];
    const bytes = files.reduce(
      (sum, file) => sum + gzipSync(readFileSync(new URL(`../../${file}`, import.meta.url))).length,
      gzipSync(page(frame)).length,
    );
    // 40 kB, so that the fullest page may add 60 kB of its own
    expect(bytes).toBeLessThan(40_000);
  });

  it("renders a part alone, for a fragment or a live message", () => {
    expect(render(<p>31.10 g</p>)).toBe("<p>31.10 g</p>");
    expect(render(null)).toBe("");
  });
});
