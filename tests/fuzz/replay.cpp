// Goes through the kept inputs of one fuzz target once, with no fuzzer at work. For each of them also every
// beginning of it, up to some hundreds: files get cut short.

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size);

namespace {

void run(const std::string& bytes) { LLVMFuzzerTestOneInput(reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size()); }

}  // namespace

int main(int count, char** words) {
    int files = 0, inputs = 0;
    for (int i = 1; i < count; ++i)
        for (const auto& entry : std::filesystem::directory_iterator(words[i])) {
            std::ifstream in(entry.path(), std::ios::binary);
            const std::string bytes{std::istreambuf_iterator<char>(in), {}};
            const std::size_t step = std::max<std::size_t>(1, bytes.size() / 300);
            for (std::size_t length = 0; length < bytes.size(); length += step, ++inputs) run(bytes.substr(0, length));
            run(bytes);
            ++files, ++inputs;
        }
    std::printf("%d kept inputs, %d with their beginnings\n", files, inputs);
    return files == 0;
}
