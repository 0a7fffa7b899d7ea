// Is a browser looked for where each system keeps it?
import { describe, expect, test } from "vitest";
import { findBrowser, usualPlaces, wrongBrowserName } from "../../src/pdf/find-browser.ts";

describe("usualPlaces", () => {
  // Where the installers put them: common practice of the three systems, from memory.
  test("on macOS in /Applications and in the user's own", () => {
    const places = usualPlaces({ platform: "darwin", env: { HOME: "/Users/x" } });
    expect(places).toContain("/Applications/Google Chrome.app/Contents/MacOS/Google Chrome");
    expect(places).toContain("/Users/x/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge");
  });

  test("on Windows below the three program folders, where they are set", () => {
    const places = usualPlaces({ platform: "win32", env: { PROGRAMFILES: "C:\\Program Files" } });
    expect(places).toContain("C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe");
    expect(places.every((place) => place.startsWith("C:\\"))).toBe(true);
  });

  test("on Linux in /usr/bin before anything else", () => {
    expect(usualPlaces({ platform: "linux", env: {} })[0]).toBe("/usr/bin/google-chrome");
  });
});

describe("findBrowser", () => {
  test("the one that REEVEBOOK_BROWSER names comes first, and its identity changes with the file", () => {
    const found = findBrowser({ platform: "linux", env: { REEVEBOOK_BROWSER: process.execPath } });
    expect(found?.kind).toBe("named");
    expect(found?.identity).toContain(process.execPath);
  });

  test("an empty name is none: an installed browser or the one of the packages is looked for", () => {
    expect(findBrowser({ platform: "linux", env: { REEVEBOOK_BROWSER: "" } })?.kind).not.toBe("named");
  });
});

describe("wrongBrowserName", () => {
  test.each(["/no/such", "/usr"])("%s, which is no file, is told with what to do", (name) => {
    expect(wrongBrowserName({ env: { REEVEBOOK_BROWSER: name } })).toMatch(
      new RegExp(`^REEVEBOOK_BROWSER names "${name}", but there is no such file\\n {2}fix: .*\\n$`),
    );
  });

  test("a file, an empty name and none are not complained about", () => {
    for (const env of [{ REEVEBOOK_BROWSER: process.execPath }, { REEVEBOOK_BROWSER: "" }, {}])
      expect.soft(wrongBrowserName({ env })).toBeUndefined();
  });
});
