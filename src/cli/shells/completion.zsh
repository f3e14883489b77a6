#compdef swap-audit
# TAB completion of swap-audit for zsh. In ~/.zshrc, after compinit:
#   source <(swap-audit completion zsh)
# or as a file named _swap-audit in a folder of $fpath.
# swap-audit itself says what may come next, so that this script never grows old: a candidate a line with its meaning
# after a tab, or a slash and the ending of the paths that fit.
_swap-audit() {
	local line
	local -a found
	for line in "${(@f)$(swap-audit complete -- "${(@Q)words[2,CURRENT]}" 2>/dev/null)}"; do
		case $line in
			/*) _files -g "*${line#/}" ;;
			?*) found+=("${${line%%$'\t'*}//:/\\:}:${line#*$'\t'}") ;;
		esac
	done
	(( $#found )) && _describe 'swap-audit' found
}
if [[ $funcstack[1] == _swap-audit ]]; then _swap-audit "$@"; else compdef _swap-audit swap-audit; fi
