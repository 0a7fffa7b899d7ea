// What is said when the program itself is at fault?

export const faultText = (error: unknown): string =>
  `this is a fault of the program, not of your file:\n${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`;
