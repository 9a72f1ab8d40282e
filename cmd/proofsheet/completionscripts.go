package main

// completionScripts are the scripts by shell. Each asks the program for words and
// leaves names of files to the shell.
var completionScripts = map[string]string{
	"bash": `# proofsheet completion for bash
_proofsheet() {
	local words=("${COMP_WORDS[@]:0:COMP_CWORD+1}") cur line file
	words=("${words[@]//[\\\"\']/}")
	words=("${words[@]/#\~\//$HOME/}")
	cur=${words[COMP_CWORD]}
	[[ $cur == "=" ]] && cur=
	COMPREPLY=()
	while IFS= read -r line; do
		case $line in
		:files*)
			compopt -o filenames 2>/dev/null
			line=${line#:files}
			while IFS= read -r file; do
				[[ -d $file || $file == *"${line# }" ]] && COMPREPLY+=("$file")
			done < <(compgen -f -- "$cur")
			;;
		:folders)
			compopt -o filenames 2>/dev/null
			while IFS= read -r file; do COMPREPLY+=("$file"); done < <(compgen -d -- "$cur")
			;;
		*)
			printf -v line %q "${line%%$'\t'*}"
			COMPREPLY+=("$line")
			;;
		esac
	done < <("${words[0]}" completion words "${words[@]:1}" 2>/dev/null)
	if [[ ${#COMPREPLY[@]} == 1 && ${COMPREPLY[0]} == *= ]]; then compopt -o nospace 2>/dev/null; fi
}
complete -F _proofsheet proofsheet
`,
	"zsh": `#compdef proofsheet
# proofsheet completion for zsh
_proofsheet() {
	local line name
	local -a plain open
	for line in "${(@f)$("${(Q)words[1]}" completion words "${(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
		case $line in
		"") ;;
		:folders) _files -/ ;;
		:files*) _files -g "*${${line#:files}# }(-.)" ;;
		*)
			name=${line%%$'\t'*}
			if [[ $name == *= ]]; then open+=("$name"); continue; fi
			plain+=("${name//:/\\:}:${line#*$'\t'}")
			;;
		esac
	done
	if (( $#open )); then compadd -S "" -a open; fi
	if (( $#plain )); then _describe proofsheet plain; fi
}
if [[ $funcstack[1] == _proofsheet ]]; then _proofsheet "$@"; else compdef _proofsheet proofsheet; fi
`,
	"fish": `# proofsheet completion for fish
function __proofsheet_words
	set -l words (commandline -opc)
	set -l current (commandline -ct)
	set -l program $words[1]
	set -e words[1]
	for line in ($program completion words $words "$current" 2>/dev/null)
		switch $line
			case ':folders'
				__fish_complete_directories "$current"
			case ':files*'
				__fish_complete_path "$current"
			case '*'
				echo $line
		end
	end
end
complete -c proofsheet -f -a '(__proofsheet_words)'
`,
}
