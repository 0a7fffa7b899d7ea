// Where is the program? Seen from its sources and from its compiled form alike.
import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds package.json and layouts/, seen from the sources and from the compiled program alike. */
export const packageRoot = (): string => {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "layouts", "pages"))) {
    const above = dirname(folder);
    if (above === folder) throw new Error("the folder layouts/ is not where the program is");
    folder = above;
  }
  return folder;
};
