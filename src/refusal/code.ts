/** The stable codes of every refusal: what a program may test for instead of the words. */

export const refusalCodes = {
  'not-finite': 'a number is NaN or infinite, or not a number at all',
  'below-minimum': 'a number is under the least value that has a meaning',
  'above-maximum': 'a number is over the greatest value that has a meaning',
  'not-a-choice': 'a word is not one of the words allowed here',
  'unknown-key': 'an object carries a name that this document does not know',
  'missing-key': 'a name that must be there is not',
  'wrong-type': 'a value is of another kind than the one asked for',
  'wrong-length': 'a list is too short, too long, or does not match another list',
  'not-increasing': 'a list that must rise from entry to entry does not',
  conflict: 'two values, each allowed alone, cannot both be true',
  'not-json': 'the text is not JSON',
  'too-large': 'the document is larger than the reader accepts',
  'too-deep': 'the document is nested deeper than the reader accepts',
  'unknown-version': 'the document names a version that this program does not know',
  'no-convergence': 'an iteration stopped before it reached its tolerance',
} as const

export type RefusalCode = keyof typeof refusalCodes
