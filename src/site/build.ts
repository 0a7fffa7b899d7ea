// How do packets become web pages? Through Eleventy's programming interface; what it renders is written by our own hand.
import { join, relative } from "node:path";
import type { Packet } from "../packet/packet.ts";
import type { ArchiveEntry } from "./archive.ts";
import { webCss } from "./assets.ts";
import { blocksHtml, type Layouts } from "./layouts.ts";
import { strict } from "./strict.ts";

export interface PacketPage {
  readonly packet: Packet;
  /** The printed packets. */
  readonly prints: readonly Link[];
  readonly data: readonly Link[];
}

export interface Link {
  readonly href: string;
  readonly name: string;
}

export interface SiteOptions {
  readonly layouts: Layouts;
  readonly root: string;
  /** Job numbers whose pages are made, in order. */
  readonly numbers: readonly string[];
  /** Called when the page's turn comes; undefined leaves the page out. Nothing of it is kept. */
  readonly pageOf: (number: string) => PacketPage | undefined;
  /** The list of jobs, when it is wanted; it may wait for what else the build does. */
  readonly archive?: () => Promise<readonly ArchiveEntry[]>;
  readonly write: (path: string, text: string) => void;
}

/** Loads the site engine, so that its pages can be asked for at once. */
export const loadEngine = async (): Promise<typeof import("@11ty/eleventy")> => {
  // Its watcher of changed modules would start a thread, and nothing is watched here.
  process.env["ELEVENTY_SKIP_ESM_RESOLVER"] ??= "1";
  return import("@11ty/eleventy");
};

/**
 * Page templates are empty and all content stands in the layouts: Eleventy keeps a template's own content to the end
 * of the build but drops what layouts add to it, and a dry run hands each finished page to us instead of the disk.
 */
export const buildSite = async ({ layouts, root, numbers, pageOf, archive, write }: SiteOptions): Promise<void> => {
  const { Eleventy } = await loadEngine();
  const { env, assets } = layouts;
  // Handed over as data of the pages: the engine keeps compiled layouts from one build of a process to the next.
  const packetPage = (number: string): PacketPage | null => {
    const page = pageOf(number);
    if (page === undefined) return null;
    for (const sheet of page.packet.sheets) blocksHtml(sheet);
    return strict(page, "page");
  };
  let written = Promise.resolve();
  // The engine takes the current folder off the front of a path letter by letter: of a neighbour whose name begins alike, too.
  const input = relative("", join(root, "layouts"));
  const eleventy = new Eleventy(input, "", {
    quietMode: true,
    config: (config) => {
      config.ignores.delete("**/node_modules/**"); // else a packaged program builds no page and says nothing
      config.setUseGitIgnore(false);
      config.setLayoutsDirectory("pages");
      config.setIncludesDirectory("parts");
      config.setDataDirectory(".no-data");
      config.setLibrary("njk", env);
      if (numbers.length > 0) {
        config.addTemplate("virtual-packet.njk", "", {
          layout: "packet.njk",
          pagination: { data: "numbers", size: 1, alias: "jobId" },
          numbers,
          packetPage,
          permalink: (data: { jobId: string }) => `/${data.jobId}/index.html`,
        });
      }
      if (archive !== undefined) config.addTemplate("virtual-index.njk", "", { layout: "index.njk", permalink: "/index.html", archive });
      config.addTransform("hand over", function (content) {
        const { url } = this.page;
        // Written a moment later: the engine times what happens in here and complains about slow disks.
        if (/\S/.test(content)) written = written.then(() => write(`${url.slice(1)}index.html`, content));
        return "";
      });
    },
  });
  eleventy.disableLogger();
  eleventy.setDryRun(true);
  await eleventy.init();
  await eleventy.write();
  await written;
  if (archive !== undefined) write("sheets.css", webCss(assets));
};
