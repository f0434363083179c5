// SPDX-FileCopyrightText: The project authors
// SPDX-License-Identifier: GPL-3.0-only

/// The floor that bench_measure compares with: a program that only reads the bytes
/// of the tables in a folder, and says how many there were.

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <vector>

int main(int argc, char **argv)
{
    if (argc != 2)
        return 2;
    std::size_t total = 0;
    for (const auto &file : std::filesystem::directory_iterator(argv[1])) {
        std::vector<char> bytes(file.file_size());
        std::ifstream(file.path(), std::ios::binary).read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
        total += bytes.size();
    }
    std::printf("%zu\n", total);
}
