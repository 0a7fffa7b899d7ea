// How is text that came from outside said in a terminal? Without the signs that steer it.

export const printable = (text: string): string => text.replace(/[\p{Cc}\p{Cf}]/gu, "?");
