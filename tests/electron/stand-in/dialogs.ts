/** The system's dialogs: they answer at once with what was laid ready, or as if the player had closed them. */
export function makeDialogs() {
  const answers: { open: string[][]; save: (string | undefined)[]; box: number[] } = { open: [], save: [], box: [] };
  const asked: { kind: string; options: Record<string, unknown> }[] = [];
  const errors: { title: string; content: string }[] = [];
  // With or without a window before the options.
  const ask = (kind: string, args: unknown[]) => asked.push({ kind, options: args.at(-1) as Record<string, unknown> });

  const dialog = {
    showOpenDialog: async (...args: unknown[]) => {
      ask('open', args);
      const filePaths = answers.open.shift() ?? [];
      return { canceled: filePaths.length === 0, filePaths };
    },
    showSaveDialog: async (...args: unknown[]) => {
      ask('save', args);
      const filePath = answers.save.shift();
      return { canceled: filePath === undefined, filePath: filePath ?? '' };
    },
    showMessageBox: async (...args: unknown[]) => {
      ask('box', args);
      return { response: answers.box.shift() ?? 0 };
    },
    showErrorBox: (title: string, content: string) => {
      errors.push({ title, content });
    },
  };
  return { dialog, answers, asked, errors };
}
