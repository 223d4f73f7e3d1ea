import { gzipSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { page } from "../../views/page.tsx";
import { gallery } from "./gallery/index.tsx";
import { policyBreaches, unknownHxNames } from "./markup.ts";

describe.each(gallery.map(({ name, frame }) => [name, page(frame)] as const))("the page %s", (_, html) => {
  it("uses only attributes that htmx knows", () => {
    expect(unknownHxNames(html)).toEqual([]);
  });

  it("carries nothing inline and reaches no outside host", () => {
    expect(policyBreaches(html)).toEqual([]);
  });

  it("has unique ids, and every label, description and fragment target leads to one", () => {
    const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((match) => match[1]);
    expect(ids.filter((id, index) => ids.indexOf(id) !== index)).toEqual([]);
    const wanted = [
      ...[...html.matchAll(/\s(?:for|aria-describedby|aria-labelledby)="([^"]*)"/g)].flatMap((match) =>
        (match[1] ?? "").split(" "),
      ),
      ...[...html.matchAll(/(?:hx-target|hx-select|href)="#([^"]*)"/g)].map((match) => match[1]),
    ];
    expect(wanted.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it("sends a token with every form that changes something", () => {
    for (const [form] of html.matchAll(/<form[^>]*method="post".*?<\/form>/gs))
      expect(form).toMatch(/name="_csrf" value="gallery"/);
  });

  it("has no hole where a value should stand", () => {
    expect(html).not.toMatch(/undefined|\bNaN\b|\[object /);
  });

  it("says report and density test, never the words that belong to offices and laboratories", () => {
    expect(html.replaceAll("not an assay", "").replaceAll("Assay Counter", "")).not.toMatch(
      /certif|\bassay(s|ed)?\b|\bscore\b|\brating\b/i,
    );
  });

  it("weighs less than 60 kB gzipped, so that with all it loads it stays under 100 kB", () => {
    expect(gzipSync(html).length).toBeLessThan(60_000);
  });
});
