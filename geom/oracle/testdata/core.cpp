// Signs of numbers by CORE::Expr, from root separation bounds on the graph of
// operations. The input and the answers are those of calcium.c; there are no cosines.

#include <ctime>
#include <iostream>
#include <sstream>
#include <string>
#include <vector>

#include <CGAL/CORE_Expr.h>

using CORE::BigInt;
using CORE::Expr;

static Expr rational(const std::string &text)
{
    auto bar = text.find('/');
    if (bar == std::string::npos)
        return Expr(BigInt(text));
    return Expr(BigInt(text.substr(0, bar))) / Expr(BigInt(text.substr(bar + 1)));
}

// The value of a line's last step; false where a step is a cosine.
static bool work_out(const std::string &line, Expr &value)
{
    std::istringstream words(line);
    std::vector<Expr> made;
    std::string op, text;
    while (words >> op) {
        std::size_t i = 0, j = 0;
        if (op == "c")
            return false;
        if (op == "q") {
            words >> text;
            made.push_back(rational(text));
            continue;
        }
        words >> i;
        if (op != "r")
            words >> j;
        const Expr x = made[i], y = made[j];
        switch (op[0]) {
        case '+': made.push_back(x + y); break;
        case '-': made.push_back(x - y); break;
        case '*': made.push_back(x * y); break;
        case '/': made.push_back(x / y); break;
        case 'r': made.push_back(sqrt(x)); break;
        }
    }
    value = made.back();
    return true;
}

int main()
{
    std::string line;
    while (std::getline(std::cin, line)) {
        std::clock_t start = std::clock();
        Expr value;
        std::string answer = "?";
        if (work_out(line, value))
            answer = std::to_string(value.sign());
        std::cout << answer << " " << (std::clock() - start) * 1e3 / CLOCKS_PER_SEC << std::endl;
    }
}
