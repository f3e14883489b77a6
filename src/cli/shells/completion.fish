# TAB completion of swap-audit for fish. Once:
#   swap-audit completion fish > ~/.config/fish/completions/swap-audit.fish
# swap-audit itself says what may come next, so that this script never grows old: a candidate a line with its meaning
# after a tab, or a slash and the ending of the paths that fit.
function __swap_audit_complete
	set -l words (commandline -opc)
	set -e words[1]
	set -l last (commandline -ct)
	set -q last[1]; or set last ''
	for line in (swap-audit complete -- $words $last 2>/dev/null)
		if string match -q '/*' -- $line
			__fish_complete_suffix (string sub -s 2 -- $line)
		else
			echo $line
		end
	end
end
complete -c swap-audit -f -a '(__swap_audit_complete)'
