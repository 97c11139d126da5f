/** Shells that completion is there for. */
export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

/**
 * What each shell reads so that it asks the program what could stand at the cursor. The program answers with a line for
 * each candidate: the word, a tab, what it is about. Where it offers nothing, files are offered.
 */
export const shellScripts: Readonly<Record<Shell, string>> = {
  bash: `# Completion of wintergap for bash: eval "$(wintergap completion bash)"
_wintergap() {
  local beginning=\${COMP_WORDS[COMP_CWORD]} word quoted
  local -a words=("\${COMP_WORDS[@]:1:COMP_CWORD}")
  # A name with spaces is typed in quotes or with strokes before them.
  beginning=\${beginning#[\\"\\']}
  beginning=\${beginning//\\\\/}
  COMPREPLY=()
  while IFS=$'\\t' read -r word _; do
    [[ $word == "$beginning"* ]] || continue
    printf -v quoted %q "$word"
    COMPREPLY+=("$quoted")
  done < <("\${COMP_WORDS[0]}" complete -- "\${words[@]}" 2>/dev/null)
}
complete -o default -F _wintergap wintergap
`,
  zsh: `#compdef wintergap
# Completion of wintergap for zsh: eval "$(wintergap completion zsh)"
_wintergap() {
  local line
  local -a described
  for line in "\${(@f)$("\${words[1]}" complete -- "\${(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
    [[ -n $line ]] && described+=("\${\${line//:/\\\\:}/$'\\t'/:}")
  done
  if (( \${#described} )); then _describe wintergap described; else _files; fi
}
compdef _wintergap wintergap
`,
  fish: `# Completion of wintergap for fish: wintergap completion fish | source
function __wintergap_complete
  set -l words (commandline -opc) (commandline -ct)
  set -l found ($words[1] complete -- $words[2..-1] 2>/dev/null)
  if test (count $found) -gt 0
    printf '%s\\n' $found
  else
    __fish_complete_path (commandline -ct)
  end
end
complete -c wintergap -f -a '(__wintergap_complete)'
`,
};
