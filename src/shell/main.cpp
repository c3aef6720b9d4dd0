#include <exception>
#include <iostream>

#include "shell/command_line.h"

int main(int count, char** words) {
    try {
        return tubewright::run(count, words);
    } catch (const std::exception& trouble) {
        std::cerr << "Tubewright failed: " << trouble.what() << "\n";
        return 3;
    } catch (...) {
        std::cerr << "Tubewright failed.\n";
        return 3;
    }
}
