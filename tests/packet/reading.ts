// How hard is a text to read? Long sentences, and the grade of a well-known formula.

/** The longest sentence for readers who do it once: plain-writing guides of US federal offices ask for 20 words at most. */
const WORDS_most = 20;

const sentencesOf = (text: string): readonly string[] =>
  text
    .replaceAll("**", "")
    .split(/(?<=[.!?])\s+/)
    .filter((sentence) => /[a-z]/i.test(sentence));

const wordsOf = (text: string): readonly string[] => text.split(/\s+/).filter((word) => /[a-z0-9]/i.test(word));

export const longSentences = (text: string): readonly string[] =>
  sentencesOf(text).filter((sentence) => wordsOf(sentence).length > WORDS_most);

/** Groups of vowels, a silent e left out: the usual rough count. */
function syllablesOf(word: string): number {
  const letters = word.toLowerCase().replaceAll(/[^a-z]/g, "");
  const groups = letters.replace(/(?:[^laeiouy]e|ed|es)$/, "").match(/[aeiouy]+/g);
  return Math.max(1, groups?.length ?? 1);
}

/** Flesch-Kincaid grade, 0.39 words per sentence + 11.8 syllables per word - 15.59 (from memory). */
export function gradeOf(texts: readonly string[]): number {
  const sentences = texts.flatMap(sentencesOf);
  // Marks and numbers have no syllables to count.
  const words = sentences.flatMap(wordsOf).filter((word) => /^[a-z',.:;!?"()-]+$/i.test(word));
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word), 0);
  return (0.39 * words.length) / sentences.length + (11.8 * syllables) / words.length - 15.59;
}
