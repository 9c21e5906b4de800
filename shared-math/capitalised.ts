/** Words as a sentence or a label begins with them: the first letter a capital, all else as it was. */
export const capitalised = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
