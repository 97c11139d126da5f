import { createInterface } from 'node:readline';
import { InputError } from '../input-error.js';
import { printError } from '../output/print.js';

/** Who answers questions: a person at a terminal, or a list of answers, one a line. */
export interface Asker {
  /**
   * Puts a question and waits for a line.
   *
   * @returns the answer, or `null` when there are no more: the input has ended, or somebody pressed Ctrl-C
   */
  ask(question: string): Promise<string | null>;
  say(text: string): void;
  close(): void;
}

/** Questions on the standard error output, answers from the standard input, whether that is a terminal or not. */
export function terminalAsker(): Asker {
  const lines: string[] = [];
  let waiting: ((line: string | null) => void) | null = null;
  let ended = false;
  const terminal = process.stdin.isTTY === true && process.stderr.isTTY === true;
  const reader = createInterface({ input: process.stdin, output: process.stderr, terminal });
  const answer = (line: string | null) => {
    const waits = waiting;
    waiting = null;
    if (waits) waits(line);
    else if (line !== null) lines.push(line);
  };
  // Lines of a pipe come faster than questions: none may be lost.
  reader.on('line', answer);
  reader.on('close', () => {
    ended = true;
    answer(null);
  });
  reader.on('SIGINT', () => {
    printError('\n');
    reader.close();
  });
  return {
    ask(question) {
      if (terminal) reader.setPrompt(question);
      const kept = lines.shift();
      if (kept !== undefined) {
        printError(`${question}${kept}\n`);
        return Promise.resolve(kept);
      }
      if (ended) return Promise.resolve(null);
      if (terminal) reader.prompt();
      else printError(question);
      return new Promise((resolve) => {
        waiting = (line) => {
          if (!terminal) printError(`${line ?? ''}\n`);
          resolve(line);
        };
      });
    },
    say: (text) => void printError(`${text}\n`),
    close: () => reader.close(),
  };
}

/** One question: what is asked, what Enter gives, and what becomes of an answer. */
export interface Question<Answer> {
  text: string;
  /** As it would be typed. */
  usual: string;
  /** @throws Error whose message says what was found and what is expected */
  read: (answer: string) => Answer;
}

/**
 * Puts a question until its answer can be read: a wrong one is told with what is expected, and asked for again.
 *
 * @throws InputError when there are no more answers
 */
export async function answerTo<Answer>(asker: Asker, { text, usual, read }: Question<Answer>): Promise<Answer> {
  for (;;) {
    const answer = await asker.ask(`${text} [${usual}]: `);
    if (answer === null) throw new InputError(`the answers ended at "${text}"; nothing was written`);
    try {
      return read(answer.trim() === '' ? usual : answer.trim());
    } catch (error) {
      asker.say(`  ${(error as Error).message}`);
    }
  }
}
