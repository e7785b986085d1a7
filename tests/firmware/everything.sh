# Writes a C program that keeps every function of the header but the two that link all refrigerants: sourced.
#
#   everything_source HEADER OUT [NAME...]   with names: only functions whose name matches one of these patterns

everything_source() {
    local header=$1 out=$2
    shift 2
    local functions
    functions=$(sed -n 's/^[A-Za-z0-9_ ]* \**\(rimewise_[a-z0-9_]*\)(.*/\1/p' "$header" | sort -u |
        grep -v -x -e rimewise_refrigerant_find -e rimewise_refrigerant_at)
    if [[ $# -gt 0 ]]; then
        functions=$(printf '%s\n' "$functions" | grep -x "${@/#/-e}" || true)
    fi
    {
        echo '#include "rimewise.h"'
        echo 'typedef void (*Function)(void);'
        echo 'extern const Function functions[];'
        echo 'const Function functions[] = {'
        printf '    (Function)%s,\n' $functions
        echo '};'
        echo 'extern const void *volatile refrigerant;'
        echo 'const void *volatile refrigerant;'
        echo 'extern volatile unsigned chosen;'
        echo 'volatile unsigned chosen;'
        echo 'int main(void)'
        echo '{'
        echo '    refrigerant = &rimewise_r290;'
        echo '    functions[chosen]();'
        echo '    return 0;'
        echo '}'
    } >"$out"
}
