# TAB completion of swap-audit for bash. In ~/.bashrc:
#   source <(swap-audit completion bash)
# swap-audit itself says what may come next, so that this script never grows old: a candidate a line with its meaning
# after a tab, or a slash and the ending of the paths that fit.
_swap_audit() {
	local line ending words=("${COMP_WORDS[@]:1:COMP_CWORD}")
	local word=${words[COMP_CWORD - 1]//\\/}
	word=${word#[\"\']}
	words[COMP_CWORD - 1]=$word
	COMPREPLY=()
	while IFS= read -r line; do
		case $line in
		/*)
			ending=${line#/}
			# Marks folders and quotes spaces; older shells know it not, and do without.
			compopt -o filenames 2>/dev/null
			while IFS= read -r line; do
				if [[ $line == *"$ending" || -d $line ]]; then COMPREPLY+=("$line"); fi
			done < <(compgen -f -- "$word")
			;;
		*) COMPREPLY+=("${line%%$'\t'*}") ;;
		esac
	done < <(swap-audit complete -- "${words[@]}" 2>/dev/null)
}
complete -F _swap_audit swap-audit
