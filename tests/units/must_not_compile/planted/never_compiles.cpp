// A fault planted for the check itself: a snippet that is broken anyway proves nothing.
#include "units/no_such_header.hpp"

int main() {}
