// What is said when something goes wrong that no job file is to blame for?

/** The name that the system gives to what it refused to do, as EACCES or ENOSPC; undefined for an error of our own. */
export const systemCode = (error: unknown): string | undefined =>
  error instanceof Error && "syscall" in error && "code" in error && typeof error.code === "string" ? error.code : undefined;

export const faultText = (error: unknown): string => {
  if (systemCode(error) !== undefined && error instanceof Error)
    return `the system did not let the program do this: ${error.message}\n  fix: see that there is room on the disk, and that you may read and write there\n`;
  return `this is a fault of the program, not of your file:\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`;
};
